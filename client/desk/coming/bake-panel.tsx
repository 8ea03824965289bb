import { Fragment } from 'preact'
import type { ComingVariety } from '../../../shared-core/plan/coming-day.ts'
import { Panel } from '../panel.tsx'
import { LikelyCells, LikelyHeads, WhyButton } from './likely-cells.tsx'
import type { ComingParts } from './parts.ts'
import { useOpened } from './use-opened.ts'
import { WhyList } from './why-list.tsx'

/** Columns of the table, for a line that goes across. */
const COLUMNS = 7

/** How many of each variety to bake on the day, under their doughs. */
export function BakePanel(props: ComingParts) {
  const { day, say, words, date } = props
  const opened = useOpened<string>()
  return (
    <Panel part="bake" title={say.bake.title(words.times.date(date))} isWide>
      <p class="desk-quiet">{say.bake.hint}</p>
      <table class="coming">
        <thead>
          <tr>
            <th>{say.columns.variety}</th>
            <LikelyHeads say={say} />
            <th class="desk-number">{say.columns.orders}</th>
            <th class="desk-number">{say.columns.bake}</th>
            <th />
          </tr>
        </thead>
        {day.doughs.map(({ doughId, basis, varieties }) => (
          <tbody key={doughId}>
            {day.doughs.length > 1 && varieties.length > 1 && (
              <tr class="coming-group">
                <th colSpan={COLUMNS} scope="rowgroup">
                  {words.names.dough(doughId)}
                </th>
              </tr>
            )}
            {varieties.map((variety) => (
              <Fragment key={variety.varietyId}>
                <VarietyRow
                  {...props}
                  variety={variety}
                  isSure={variety.basis === basis}
                  isAlone={varieties.length === 1}
                  isOpen={opened.isOpen(variety.varietyId)}
                  onToggle={opened.toggle}
                />
                {opened.isOpen(variety.varietyId) && (
                  <tr class="coming-opened">
                    <td colSpan={COLUMNS}>
                      <WhyList {...props} why={variety.why} unit="board" />
                      <p class="desk-quiet">{say.bake.expects(Math.round(variety.left), Math.round(variety.lost))}</p>
                    </td>
                  </tr>
                )}
              </Fragment>
            ))}
          </tbody>
        ))}
      </table>
    </Panel>
  )
}

interface RowProps extends ComingParts {
  readonly variety: ComingVariety
  /** As sure as its dough, of which it is said already. */
  readonly isSure: boolean
  /** The only one of its dough, so that it needs no heading. */
  readonly isAlone: boolean
  readonly isOpen: boolean
  readonly onToggle: (varietyId: string) => void
}

function VarietyRow({ variety, isSure, isAlone, isOpen, onToggle, say, words }: RowProps) {
  const name = words.names.variety(variety.varietyId)
  const isUnknown = variety.basis === 'nothing'
  return (
    <tr>
      <th scope="row" class={isAlone ? undefined : 'coming-variety'}>
        {name} {!isSure && !isUnknown && <span class="coming-basis">{say.basis[variety.basis]}</span>}
      </th>
      <LikelyCells of={variety} say={say} />
      <td class="desk-number" data-label={say.columns.orders}>
        {variety.ordered}
      </td>
      <td class="desk-number" data-label={say.columns.bake}>
        {isUnknown && variety.bake === 0 ? '–' : <strong>{variety.bake}</strong>}
      </td>
      <td>
        {variety.why.length > 0 && (
          <WhyButton name={name} isOpen={isOpen} say={say} onToggle={() => onToggle(variety.varietyId)} />
        )}
      </td>
    </tr>
  )
}
