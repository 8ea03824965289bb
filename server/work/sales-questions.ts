import type { RememberedMapping } from '../../shared-core/live/orders-import.ts'
import type {
  BadRows,
  Mapping,
  Meaning,
  MendedRows,
  NamedMeaning,
  Preview,
  SalesFile,
  TillName,
} from '../../shared-core/live/sales-import.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import type { MendedLine } from '../sales/bad-rows.ts'
import type { FedSale } from '../sales/feed.ts'
import type { Uploaded } from '../sales/sales-books.ts'
import type { Question } from './questions.ts'

/** `no-file`: there is none of that id. `wrong-state`: that cannot be done with it now. `no-mapping`: none was said. */
export type OfFile<Value> =
  | { readonly ok: true; readonly value: Value }
  | { readonly ok: false; readonly why: 'no-file' | 'wrong-state' | 'no-mapping' }

interface File {
  readonly id: number
}

/** Past sales from tills: files, their bad rows, names, and what a till posts of days that are over; files' headers. */
export interface SalesQuestions {
  /** The folder into which files are put before `salesReceive`. */
  readonly salesFolder: Question<null, string>
  readonly salesReceive: Question<Uploaded, Preview>
  readonly salesPreview: Question<File & { readonly mapping: Mapping | null; readonly nowMs: EpochMs }, OfFile<Preview>>
  /** One that is being taken already goes on by the mapping that it has. */
  readonly salesTake: Question<File & { readonly mapping: Mapping | null }, OfFile<SalesFile>>
  /** Takes one more block of a file that is being taken; null: none is. */
  readonly salesStep: Question<null, SalesFile | null>
  /** Files that were taken and that the journal does not know of yet. */
  readonly salesToNote: Question<null, readonly SalesFile[]>
  readonly salesNoted: Question<File, void>
  readonly salesFiles: Question<null, readonly SalesFile[]>
  readonly salesFile: Question<File, OfFile<SalesFile>>
  readonly salesBad: Question<File & { readonly after: number }, OfFile<BadRows>>
  readonly salesMend: Question<File & { readonly lines: readonly MendedLine[] }, OfFile<MendedRows>>
  readonly salesRemove: Question<File, OfFile<null>>
  readonly salesNames: Question<null, readonly TillName[]>
  readonly salesMean: Question<{ readonly meanings: readonly NamedMeaning[] }, void>
  /** What names mean that are no varieties; those that nobody has said anything of are left out. */
  readonly salesMeanings: Question<{ readonly names: readonly string[] }, ReadonlyMap<string, Meaning>>
  /** How many were not there yet. */
  readonly salesFeed: Question<{ readonly sales: readonly FedSale[] }, number>
  /** What was said for files of orders with some header. */
  readonly orderMappings: Question<null, readonly RememberedMapping[]>
  /** Null: what was said is forgotten. */
  readonly rememberOrderMapping: Question<
    Pick<RememberedMapping, 'header'> & { readonly mapping: RememberedMapping['mapping'] | null },
    void
  >
}
