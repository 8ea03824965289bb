import { dividerFigures } from '../../../shared-core/dough/divider.ts'
import type { DividerChecks } from '../../../shared-core/dough/mix.ts'
import { expectedBaked, packageCheck } from '../../../shared-core/dough/package-weight.ts'
import { milligrams, weightText } from '../../../shared-core/shop/weight.ts'
import { Panel } from '../panel.tsx'
import { Sideways } from '../sideways.tsx'
import type { RoomParts } from './room.ts'

/** Pieces weighed at the divider against what they should weigh, and against the label where the shop sells by weight. */
export function DividerPanel(parts: RoomParts) {
  const { state, say } = parts
  const checks = [...state.checks.values()].sort((one, other) => (one.doughId < other.doughId ? -1 : 1))
  const { learnt } = say
  const { dividerColumns: columns } = learnt
  return (
    <Panel part="divider" title={learnt.divider} isWide>
      {checks.length === 0 ? (
        <p>{learnt.noDivider}</p>
      ) : (
        <>
          <p class="desk-quiet">{learnt.dividerHint}</p>
          <Sideways name={learnt.divider}>
            <table>
              <thead>
                <tr>
                  <th>{columns.dough}</th>
                  <th class="desk-number">{columns.scaled}</th>
                  <th class="desk-number">{columns.pieces}</th>
                  <th class="desk-number">{columns.off}</th>
                  <th class="desk-number">{columns.spread}</th>
                  <th class="desk-number">{columns.drift}</th>
                  <th>{columns.says}</th>
                </tr>
              </thead>
              <tbody>
                {checks.map((one) => (
                  <Check key={one.doughId} {...parts} checks={one} />
                ))}
              </tbody>
            </table>
          </Sideways>
          <Labels {...parts} checks={checks} />
        </>
      )}
    </Panel>
  )
}

function Check({ words, say, room, checks }: RoomParts & { readonly checks: DividerChecks }) {
  const figures = dividerFigures(checks)
  if (figures === null) return null
  const { offMilligrams, offWithinMilligrams, spreadMilligrams, driftMilligramsPerHour, codes } = figures
  const weight = (value: number | null) => (value === null ? null : room.weight(Math.round(value)))
  const signed = (value: number) => signedWeight(value, room)
  const isFine = codes.every((code) => code === 'onWeight' || code === 'tooFew')
  return (
    <tr>
      <th scope="row">{words.names.dough(checks.doughId)}</th>
      <td class="desk-number">{room.weight(figures.scaledMilligrams)}</td>
      <td class="desk-number">{figures.pieces}</td>
      <td class="desk-number">{say.learnt.off(signed(offMilligrams), weight(offWithinMilligrams))}</td>
      <td class="desk-number">{weight(spreadMilligrams) ?? '–'}</td>
      <td class="desk-number">{driftMilligramsPerHour === null ? '–' : drift(driftMilligramsPerHour, say, room)}</td>
      <td class={isFine ? 'desk-quiet' : 'desk-trouble'}>
        {isFine ? '' : '! '}
        {codes.map((code) => say.learnt.dividerSays[code]).join(', ')}
      </td>
    </tr>
  )
}

/** What rounds to nothing has no sign. */
function signedWeight(value: number, room: RoomParts['room']): string {
  const text = room.weight(Math.abs(Math.round(value)))
  return text === room.weight(0) ? text : `${value > 0 ? '+' : '−'}${text}`
}

/** By the day where it is too little to be seen by the hour. */
function drift(perHour: number, say: RoomParts['say'], room: RoomParts['room']): string {
  const text = signedWeight(perHour, room)
  return text === room.weight(0) ? say.learnt.perDay(signedWeight(perHour * 24, room)) : say.learnt.perHour(text)
}

/** Toppings are left out: pieces are weighed plain, and what goes on besides only adds to them. */
function Labels({ shop, say, room, checks }: RoomParts & { readonly checks: readonly DividerChecks[] }) {
  const labelled = checks.flatMap(({ doughId, samples }) => {
    const dough = shop.doughs.get(doughId)
    const formula = dough?.formulaId == null ? undefined : shop.formulas.get(dough.formulaId)
    if (dough?.labelWeight == null || formula === undefined) return []
    const weights = samples.flatMap(({ milligrams: each }) => each)
    const check = packageCheck(milligrams(dough.labelWeight), expectedBaked(formula, 0, weights))
    return [{ dough, label: weightText(dough.labelWeight), check }]
  })
  if (labelled.length === 0) return null
  const { learnt } = say
  const weight = (value: number) => room.weight(Math.round(value))
  return (
    <>
      <h3>{learnt.label}</h3>
      <p class="desk-quiet">{learnt.labelHint}</p>
      {labelled.map(({ dough, label, check }) => {
        const isFine = check.verdict === 'passes' || check.verdict === 'tooFew'
        const limit = check.errorLimitMilligrams === null ? null : weight(check.errorLimitMilligrams)
        return (
          <div key={dough.id} class="desk-line">
            <strong>{learnt.labelHead(dough.name, label, check.packages)}</strong>
            <span class={isFine ? undefined : 'desk-trouble'}>
              {isFine ? '' : '! '}
              {learnt.verdict[check.verdict]}
            </span>
            <span class="desk-quiet">
              {learnt.labelFigures(weight(check.averageErrorMilligrams), limit)}
              {check.allowed !== null && `; ${learnt.allowed(weight(check.allowed.milligrams), check.tooLight)}`}
            </span>
          </div>
        )
      })}
      <p class="desk-quiet desk-small">{`${learnt.source} ${learnt.office}`}</p>
    </>
  )
}
