import type {
  DateForm,
  Delimiter,
  Doubt,
  FileState,
  Mapping,
  RowFault,
  Told,
} from '../../shared-core/live/sales-import.ts'
import { EN_SALES } from './en-desk-sales.ts'
import { ES_SALES } from './es-desk-sales.ts'
import type { Words } from './words.ts'

/** What a column of a till's file may hold; `none`: it is not used. */
export type Column =
  | 'none'
  | keyof Pick<Mapping, 'date' | 'clock' | 'item' | 'detail' | 'pieces' | 'transaction' | 'line' | 'voided'>

/** What the desk says of past sales that come in files from a till. */
export interface SalesWords {
  readonly pages: { readonly files: string; readonly names: string }
  readonly pagesName: string
  readonly lead: string
  readonly waiting: string
  readonly noContact: string
  readonly unknown: string
  /** The server said no; its own sentence follows. */
  readonly failed: string
  readonly drop: DropWords
  readonly files: FilesWords
  readonly mapping: MappingWords
  readonly taking: TakingWords
  readonly bad: BadWords
  readonly names: NamesWords
  doubt(doubt: Told<Doubt>, date: (iso: string) => string): string
  fault(fault: Told<RowFault>): string
  /** With marks between thousands. @example "1,204,377" */
  number(count: number): string
}

export interface DropWords {
  readonly choose: string
  readonly orDrop: string
  readonly dropNow: string
  readonly hint: string
  /** @example "till-2026.csv: 40 % is here" */
  sending(name: string, percent: number): string
  readonly stop: string
  readonly notSent: string
}

export interface FilesWords {
  readonly title: string
  readonly none: string
  readonly columns: { readonly [column in 'name' | 'days' | 'taken' | 'doubled' | 'bad' | 'state']: string }
  readonly state: { readonly [state in FileState]: string }
  /** @example "Mon, Nov 24, 2025 to Tue, Nov 24, 2026" */
  span(from: string, to: string): string
  readonly remove: string
  /** @param rows that were taken of it */
  removeAsk(name: string, rows: string): string
  /** Of one of which no row was taken. */
  removeEmptyAsk(name: string): string
  readonly removeYes: string
  readonly removeNo: string
}

export interface MappingWords {
  title(name: string): string
  readonly hint: string
  readonly remembered: string
  readonly column: { readonly [column in Column]: string }
  readonly columnHint: { readonly [column in Column]: string }
  /** @example "Column 3" */
  columnNumber(number: number): string
  readonly missing: { readonly date: string; readonly item: string }
  readonly form: string
  readonly hasHeader: string
  readonly skip: string
  readonly delimiter: string
  readonly delimiters: { readonly [delimiter in Delimiter]: string }
  readonly quote: string
  readonly decimal: string
  readonly dateForm: string
  /** Chooses the other reading of a date. @example "No: it is Tue, Feb 3, 2026" */
  itIs(date: string): string
  readonly dateForms: { readonly [form in DateForm]: string }
  readonly understood: string
  readonly rows: { readonly [column in 'line' | 'day' | 'time' | 'item' | 'pieces' | 'purchase']: string }
  readonly voided: string
  readonly take: string
  readonly noRows: string
}

export interface TakingWords {
  /** @example "41 %, 96,000 rows a second" */
  progress(percent: number, rate: string | null): string
  readonly leave: string
  /** It does not go on for now. */
  readonly stuck: string
  readonly again: string
  result(rows: string, taken: string): string
  doubled(rows: string): string
  readonly allGood: string
  readonly toNames: string
  readonly failed: string
  readonly figures: { readonly [figure in 'rows' | 'taken' | 'doubled' | 'bad']: string }
}

export interface BadWords {
  readonly title: string
  readonly hint: string
  /** @example "Line 12" */
  line(line: number): string
  readonly save: string
  /** @example "Take these 3 lines" */
  saveAll(lines: number): string
  /** Lets a line go that is no sale. */
  readonly letGo: string
  readonly more: string
  taken(lines: number, doubled: number): string
  readonly unsaved: string
}

export interface NamesWords {
  readonly title: string
  readonly hint: string
  readonly none: string
  readonly show: { readonly open: string; readonly all: string }
  /** @example "12 names are not said, 3 % of what was sold" */
  open(names: number, percent: string): string
  readonly allSaid: string
  readonly accept: string
  acceptAll(names: number): string
  /** Before the kinds of meaning. */
  readonly means: string
  readonly kind: { readonly [kind in 'variety' | 'pack' | 'unnamed' | 'kitchen' | 'nothing']: string }
  readonly kindHint: { readonly [kind in 'variety' | 'pack' | 'unnamed' | 'kitchen' | 'nothing']: string }
  readonly notSaid: string
  readonly suggested: string
  readonly variety: string
  readonly pieces: string
  readonly anyVariety: string
  readonly among: string
  readonly amongAll: string
  readonly addLine: string
  removeLine(name: string): string
  /** For one that nobody has said. */
  readonly say: string
  readonly change: string
  readonly save: string
  readonly cancel: string
  readonly forget: string
  readonly search: string
  /** What a meaning says. @example "12 × Sesame", "6 Plain + 6 Sesame", "13 pieces that are not named" */
  meaning: {
    variety(name: string, pieces: number): string
    pack(lines: readonly { readonly name: string; readonly pieces: number }[]): string
    unnamed(pieces: number, among: readonly string[] | null): string
    kitchen(name: string | null, pieces: number): string
    readonly nothing: string
  }
  more(names: number): string
}

export function salesWords(words: Words): SalesWords {
  return words.language === 'en' ? EN_SALES : ES_SALES
}
