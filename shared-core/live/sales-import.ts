import type { VarietyId } from '../ids.ts'
import type { EpochMs } from '../units.ts'

/** What the server's API says of past sales that come in files from a till: `/api/v1/sales/files` and `/names`. */

/** Order of day, month and year in a column of dates; `epoch-…`: seconds or milliseconds since 1970, UTC. */
export const DATE_FORMS = ['y-m-d', 'm-d-y', 'd-m-y', 'epoch-s', 'epoch-ms'] as const
export type DateForm = (typeof DATE_FORMS)[number]
export const DELIMITERS = [',', ';', '\t', '|'] as const
export type Delimiter = (typeof DELIMITERS)[number]

/** Which column of a file holds what, counted from 0. Remembered for the next file with the same header. */
export interface Mapping {
  /** Lines at the beginning that are none of the table, such as a report's title. */
  readonly skip: number
  readonly hasHeader: boolean
  readonly delimiter: Delimiter
  readonly quote: '"' | "'"
  readonly decimal: '.' | ','
  /** The date, or date and time in one. */
  readonly date: number
  /** Null: the time stands with the date. */
  readonly clock: number | null
  readonly dateForm: DateForm
  readonly item: number
  /** What belongs to the item's name and stands apart, such as a size; null: nothing. */
  readonly detail: number | null
  /** How many were sold; null: one a row. */
  readonly pieces: number | null
  /** What the rows of one purchase have in common; null: each row is a purchase of its own. */
  readonly transaction: number | null
  /** An id of the row itself, by which it is known again; null: there is none. */
  readonly line: number | null
  /** Says of a row that it was voided or returned; null: only a minus sign does. */
  readonly voided: number | null
}

/** `waiting`: for its mapping. `taking`: goes on by itself after a stop. `failed`: see `why`. */
export type FileState = 'waiting' | 'taking' | 'taken' | 'failed'

export interface SalesFile {
  readonly id: number
  readonly name: string
  readonly sha256: string
  /** As it is read, in UTF-8. */
  readonly bytes: number
  readonly addedAtMs: EpochMs
  readonly state: FileState
  /** How far it is read. */
  readonly bytesRead: number
  readonly rows: number
  /** Good rows; of these some were there already, from another file or the till's own feed. */
  readonly taken: number
  readonly doubled: number
  readonly bad: number
  /** First and last date of its good rows; null: none yet. */
  readonly from: string | null
  readonly to: string | null
  /** Why it failed, or why it does not go on for now, a sentence; else null. */
  readonly why: string | null
}

/** What is said of a row or a file by a code, so that screens say it in their language. `text` is English. */
export interface Told<Code extends string> {
  readonly code: Code
  readonly params: { readonly [name: string]: string | number }
  readonly text: string
}

export const ROW_FAULTS = [
  /** {columns, needed} */
  'too-few-columns',
  /** {text, column, example}: a date in the form of the others */
  'no-date',
  /** {text, column} */
  'to-come',
  'no-time',
  'no-item',
  'no-pieces',
  'parts-of-pieces',
  'too-many-pieces',
  /** {} */
  'open-quote',
] as const
export type RowFault = (typeof ROW_FAULTS)[number]

export const DOUBTS = [
  /** {text, one, other}: both readings of a date; a day after the 12th would decide. */
  'day-or-month',
  /** {name, id}: this very file was taken already. */
  'same-file',
  /** {}: nothing tells which rows were bought together. */
  'no-transaction',
  /** {}: no column of pieces. */
  'one-a-row',
  /** {}: dates without times. */
  'no-times',
  /** {bad, of}: of the rows looked at. */
  'many-bad',
] as const
export type Doubt = (typeof DOUBTS)[number]

/** A row as it was understood, in the shop's time. */
export interface UnderstoodRow {
  /** Business date, YYYY-MM-DD; minutes after its midnight, past 1,440 after the next one. */
  readonly date: string
  /** Null: the file does not say. */
  readonly minute: number | null
  readonly item: string
  /** Negative for a return. */
  readonly pieces: number
  readonly transaction: string
  readonly voided: boolean
}

export interface PreviewRow {
  readonly line: number
  readonly cells: readonly string[]
  /** One of the two is null. */
  readonly read: UnderstoodRow | null
  readonly fault: Told<RowFault> | null
}

export interface Preview {
  readonly file: SalesFile
  readonly encoding: 'utf-8' | 'utf-16le' | 'windows-1252'
  /** What will be taken unless another one is sent. */
  readonly mapping: Mapping
  /** From an earlier file with this header. */
  readonly isRemembered: boolean
  readonly columns: readonly { readonly name: string; readonly samples: readonly string[] }[]
  readonly rows: readonly PreviewRow[]
  readonly doubts: readonly Told<Doubt>[]
}

export interface BadRow {
  readonly line: number
  /** The line as it stands in the file. */
  readonly text: string
  readonly fault: Told<RowFault>
}

export interface BadRows {
  readonly bad: readonly BadRow[]
  /** Ask again with `after` the last one's line. */
  readonly hasMore: boolean
}

/** What came of lines that were corrected. */
export interface MendedRows {
  readonly taken: number
  readonly doubled: number
  readonly bad: readonly BadRow[]
}

export interface PackLine {
  readonly varietyId: VarietyId
  readonly pieces: number
}

/** What one sold of a till's name is. Pieces are of one; the row's number multiplies them. */
export type Meaning =
  | { readonly kind: 'variety'; readonly varietyId: VarietyId; readonly pieces: number }
  /** So many of each, such as a fixed dozen. */
  | { readonly kind: 'pack'; readonly lines: readonly PackLine[] }
  /** It does not say which; among some, or null: among all. */
  | { readonly kind: 'unnamed'; readonly pieces: number; readonly among: readonly VarietyId[] | null }
  /** The kitchen uses pieces for it; null: of a variety that it does not say. */
  | { readonly kind: 'kitchen'; readonly varietyId: VarietyId | null; readonly pieces: number }
  /** No bagels: coffee, a gift card. */
  | { readonly kind: 'nothing' }

export interface TillName {
  readonly name: string
  /** Of all files; pieces as the till counts them, returns taken off. */
  readonly rows: number
  readonly sold: number
  readonly lastDate: string | null
  /** Null: nobody has said. */
  readonly meaning: Meaning | null
  /** Offered where nobody has said; null: nothing is like it. */
  readonly suggested: Meaning | null
}

export interface TillNames {
  readonly names: readonly TillName[]
}

export interface NamedMeaning {
  readonly name: string
  /** Null: forget what was said. */
  readonly meaning: Meaning | null
}
