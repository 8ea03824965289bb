import type { DateForm, Mapping } from '../../../shared-core/live/sales-import.ts'
import type { Column } from '../../words/desk-sales.ts'

/** What a column can be taken for, in the order in which people look for it. */
export const COLUMNS = [
  'none',
  'date',
  'clock',
  'item',
  'detail',
  'pieces',
  'transaction',
  'line',
  'voided',
] as const satisfies readonly Column[]

type Used = Exclude<Column, 'none'>
const USED: readonly Used[] = COLUMNS.filter((column): column is Used => column !== 'none')
/** A file without these is no file of sales. */
const NEEDED = ['date', 'item'] as const
export type Needed = (typeof NEEDED)[number]

/** A mapping while it is changed: what is needed may be missing. */
export type Draft = Omit<Mapping, Needed> & { readonly [column in Needed]: number | null }

/** What a column of the file is taken for. @param at counted from 0 */
export function takenFor(draft: Draft, at: number): Column {
  return USED.find((column) => draft[column] === at) ?? 'none'
}

/** A column is taken for one thing, and each thing is in one column: what held it before is not used any more. */
export function withColumn(draft: Draft, at: number, column: Column): Draft {
  const before = takenFor(draft, at)
  const freed = before === 'none' ? draft : { ...draft, [before]: null }
  return column === 'none' ? freed : { ...freed, [column]: at }
}

/** What is still to be said. */
export function missingIn(draft: Draft): readonly Needed[] {
  return NEEDED.filter((column) => draft[column] === null)
}

/** @returns null while something is missing */
export function mappingOf(draft: Draft): Mapping | null {
  const { date, item } = draft
  return date === null || item === null ? null : { ...draft, date, item }
}

/** Day and month the other way round; a form without that doubt stays. */
export function otherReading(form: DateForm): DateForm {
  if (form === 'm-d-y') return 'd-m-y'
  return form === 'd-m-y' ? 'm-d-y' : form
}
