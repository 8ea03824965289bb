import type { TargetedKeyboardEvent } from 'preact'
import { useState } from 'preact/hooks'
import type { Wanted } from '../../../shared-core/dough/mix.ts'
import type { DoughId } from '../../../shared-core/ids.ts'
import type { WantedProps } from './wanted-panel.tsx'
import type { WantedField, WantedRow } from './wanted-view.ts'
import { rowPieces, shownText, standingOf, typedKey, typedPieces, WANTED_FIELDS } from './wanted-view.ts'

interface RowsProps extends WantedProps {
  readonly wanted: Wanted | undefined
  /** A week before. */
  readonly before: Wanted | undefined
}

/** Doughs, and their varieties where some are wanted by name or somebody opened them. */
export function WantedRows(props: RowsProps) {
  const { say, groups, wanted, typed, before } = props
  const [opened, setOpened] = useState<ReadonlySet<DoughId>>(new Set())
  const hasNumber = ({ key }: WantedRow) =>
    WANTED_FIELDS.some((field) => shownText(wanted, typed, key, field) !== '' || standingOf(before, key, field) > 0)
  return (
    <tbody>
      {groups.flatMap(({ dough, varieties }) => {
        const isOpened = opened.has(dough.doughId)
        const shown = varieties.filter((row) => isOpened || hasNumber(row))
        const toggle = () => {
          const next = new Set(opened)
          if (!next.delete(dough.doughId)) next.add(dough.doughId)
          setOpened(next)
        }
        return [
          <Row key={dough.key} {...props} row={dough} isVariety={false}>
            {varieties.length > 0 && (shown.length < varieties.length || isOpened) && (
              <button
                type="button"
                class="dough-open"
                aria-expanded={isOpened}
                aria-label={say.wanted.byVarietyOf(dough.name)}
                onClick={toggle}
              >
                {isOpened ? say.wanted.fewer : say.wanted.byVariety}
              </button>
            )}
          </Row>,
          ...shown.map((row) => <Row key={row.key} {...props} row={row} isVariety />),
        ]
      })}
    </tbody>
  )
}

interface RowProps extends RowsProps {
  readonly row: WantedRow
  readonly isVariety: boolean
  readonly children?: preact.ComponentChildren
}

function Row({ row, isVariety, children, ...props }: RowProps) {
  const { say, wanted, typed, before, onTyped } = props
  const sum = rowPieces(wanted, typed, row.key)
  const earlier = standingOf(before, row.key, 'pieces') + standingOf(before, row.key, 'ordered')
  return (
    <tr class={isVariety ? 'dough-variety' : undefined}>
      <th scope="row">
        <span class="dough-row-name">
          <span>{row.name}</span> {children}
        </span>
      </th>
      {before !== undefined && <td class="desk-number desk-quiet">{earlier === 0 ? '' : earlier}</td>}
      {WANTED_FIELDS.map((field) => {
        const text = shownText(wanted, typed, row.key, field)
        return (
          <td key={field}>
            <input
              class="desk-short dough-pieces"
              inputMode="numeric"
              autocomplete="off"
              data-field={field}
              aria-label={say.wanted.field[field](row.name)}
              aria-invalid={typedPieces(text) === null}
              value={text}
              onFocus={(event) => event.currentTarget.select()}
              onInput={(event) => onTyped(new Map([...typed, [typedKey(row.key, field), event.currentTarget.value]]))}
              onKeyDown={(event) => moveWithin(event, field)}
            />
          </td>
        )
      })}
      <td class="desk-number">{sum === null ? '?' : sum === 0 ? '' : sum}</td>
    </tr>
  )
}

/** Up and down the column as in any table; Enter goes down, and on the last row saves. */
function moveWithin(event: TargetedKeyboardEvent<HTMLInputElement>, field: WantedField): void {
  const step = event.key === 'ArrowUp' ? -1 : event.key === 'ArrowDown' || event.key === 'Enter' ? 1 : 0
  if (step === 0) return
  const column = [...(event.currentTarget.closest('tbody')?.querySelectorAll('input') ?? [])].filter(
    (input) => input.dataset.field === field,
  )
  const next = column[column.indexOf(event.currentTarget) + step]
  if (next === undefined) return
  event.preventDefault()
  next.focus()
}
