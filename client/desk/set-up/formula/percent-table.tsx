import type { Ingredient, Share } from '../../../../shared-core/shop/formula.ts'
import { PERCENT_MAX } from '../../../../shared-core/shop/set-up-limits.ts'
import { AddPick } from '../fields/add-pick.tsx'
import { NumberField } from '../fields/number-field.tsx'
import type { SetUpProps } from '../set-up-parts.ts'

/** A column beside the percentages, a text for each line. */
export interface PercentColumn {
  readonly head: string
  readonly cells: readonly string[]
  readonly sum: string
}

export interface PercentTableProps<Line extends Share> {
  readonly parts: SetUpProps
  readonly caption: string
  readonly lines: readonly Line[]
  /** What may be added. */
  readonly more: readonly Ingredient[]
  readonly columns?: readonly PercentColumn[]
  /** Head of the percentages; left out: of all flour. */
  readonly percentHead?: string
  /** Rows without a percentage of their own, a text for each column. */
  readonly extras?: readonly { readonly key: string; readonly name: string; readonly cells: readonly string[] }[]
  /** When each goes in; left out: all at once. */
  readonly when?: (line: Line, set: (line: Line) => void) => preact.ComponentChildren
  readonly sum: string
  readonly toLine: (ingredient: Ingredient) => Line
  readonly onChange: (lines: readonly Line[]) => void
}

/** Ingredients with their percentages, typed line by line. */
export function PercentTable<Line extends Share>(props: PercentTableProps<Line>) {
  const { parts, caption, lines, columns = [], percentHead, extras = [], when, sum, onChange } = props
  const { say } = parts
  const { table } = say.dough
  const set = (at: number, line: Line) => onChange(lines.map((one, index) => (index === at ? line : one)))
  return (
    <div class="setup-bakers">
      <table>
        <caption>{caption}</caption>
        <thead>
          <tr>
            <th scope="col">{table.ingredient}</th>
            <th scope="col">{percentHead ?? table.percent}</th>
            {when !== undefined && <th scope="col">{table.when}</th>}
            {columns.map(({ head }) => (
              <th key={head} scope="col" class="setup-figure">
                {head}
              </th>
            ))}
            <td />
          </tr>
        </thead>
        <tbody>
          {lines.map((line, at) => (
            <PercentRow
              key={`${line.ingredientId} ${'at' in line ? String(line.at) : ''}`}
              parts={parts}
              line={line}
              when={when}
              heads={columns.map(({ head }) => head)}
              cells={columns.map(({ cells }) => cells[at] ?? '')}
              onSet={(next) => set(at, next)}
              onRemove={() => onChange(lines.filter((_, index) => index !== at))}
            />
          ))}
          {extras.map(({ key, name, cells }) => (
            <tr key={key}>
              <th scope="row">{name}</th>
              <td />
              {when !== undefined && <td />}
              {columns.map(({ head }, at) => (
                <td key={head} class="setup-figure" data-head={head}>
                  {cells[at]}
                </td>
              ))}
              <td />
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row">{table.sum}</th>
            <td>{sum}</td>
            {when !== undefined && <td />}
            {columns.map(({ head, sum: total }) => (
              <td key={head} class="setup-figure" data-head={head}>
                {total}
              </td>
            ))}
            <td />
          </tr>
        </tfoot>
      </table>
      <AddLine {...props} />
    </div>
  )
}

interface PercentRowProps<Line extends Share> {
  readonly parts: SetUpProps
  readonly line: Line
  readonly when: PercentTableProps<Line>['when']
  readonly heads: readonly string[]
  readonly cells: readonly string[]
  readonly onSet: (line: Line) => void
  readonly onRemove: () => void
}

function PercentRow<Line extends Share>({ parts, line, when, heads, cells, onSet, onRemove }: PercentRowProps<Line>) {
  const { draft, say } = parts
  const name = draft.ingredients.get(line.ingredientId)?.name ?? '?'
  return (
    <tr data-ingredient={line.ingredientId}>
      <th scope="row">{name}</th>
      <td>
        <NumberField
          label={`${name}, ${say.dough.table.percent}`}
          value={line.percent / 1_000}
          min={0.001}
          max={PERCENT_MAX}
          decimals={3}
          isLabelSilent
          say={say}
          onChange={(percent) => onSet({ ...line, percent: Math.round(percent * 1_000) })}
        />
      </td>
      {when !== undefined && <td>{when(line, onSet)}</td>}
      {cells.map((cell, at) => (
        <td key={at} class="setup-figure" data-head={heads[at]}>
          {cell}
        </td>
      ))}
      <td>
        <button type="button" aria-label={say.dough.table.remove(name)} onClick={onRemove}>
          ×
        </button>
      </td>
    </tr>
  )
}

function AddLine<Line extends Share>({ parts, more, lines, toLine, onChange }: PercentTableProps<Line>) {
  const { say } = parts
  if (parts.draft.ingredients.size === 0) return <p class="setup-hint">{say.dough.noIngredients}</p>
  return (
    <AddPick
      label={say.dough.table.ingredient}
      say={say}
      more={more}
      onAdd={(ingredient) => onChange([...lines, toLine(ingredient)])}
    />
  )
}

/** What a sum lacks to 100 %, or has too much; with a mark that is no colour. */
export function SumText(props: { readonly label: string; readonly percent: number; readonly parts: SetUpProps }) {
  const { label, percent, parts } = props
  const { dough } = parts.say
  const off = 100_000 - percent
  const text = `${label} ${percent / 1_000} %`
  if (off === 0) return <p class="setup-hint">{`✓ ${text}`}</p>
  const said = off > 0 ? dough.missing(String(off / 1_000)) : dough.tooMuch(String(-off / 1_000))
  return (
    <p class="setup-rule" role="status">
      {`! ${text}: ${said}`}
    </p>
  )
}
