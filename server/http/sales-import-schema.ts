import * as z from 'zod'
import { PIECES_MAX } from '../../shared-core/day/command-fields.ts'
import { varietyId } from '../../shared-core/ids.ts'
import { DATE_FORMS, DELIMITERS } from '../../shared-core/live/sales-import.ts'
import { list, oneOf, record, whole } from '../../shared-core/shop/set-up-fields.ts'

/** What comes in about files of past sales. The same schemas read it and describe it. */

const COLUMNS_MAX = 500
const LINES_MAX = 1_000_000_000
const LINE_TEXT_MAX = 4_000
const LINES_AT_ONCE = 500
const NAMES_AT_ONCE = 5_000
const NAME_MAX = 200
/** One sold of a name is at most a case of bagels. */
const EACH_MAX = Math.min(PIECES_MAX, 1_000)
const VARIETIES_MAX = 100

const column = () => whole(0, COLUMNS_MAX)
const text = (most: number, right = `A text of at most ${most} characters.`) => z.string(right).max(most, right)
const variety = () => text(64, 'The id of a variety, as in /api/v1/set-up.').transform(varietyId)

export const mappingSchema = record({
  skip: whole(0, 1_000),
  hasHeader: z.boolean('true or false.'),
  delimiter: oneOf(DELIMITERS),
  quote: oneOf(['"', "'"]),
  decimal: oneOf(['.', ',']),
  date: column(),
  clock: column().nullable(),
  dateForm: oneOf(DATE_FORMS),
  item: column(),
  detail: column().nullable(),
  pieces: column().nullable(),
  transaction: column().nullable(),
  line: column().nullable(),
  voided: column().nullable(),
})

export const previewAskedSchema = record({ mapping: mappingSchema.nullish() })
export const takeSchema = record({ mapping: mappingSchema.nullish() })

export const mendSchema = record({
  rows: list(record({ line: whole(1, LINES_MAX), text: text(LINE_TEXT_MAX) }), 'rows', 1, LINES_AT_ONCE),
})

const lines = list(record({ varietyId: variety(), pieces: whole(1, EACH_MAX) }), 'lines', 1, VARIETIES_MAX)
const meaning = z.discriminatedUnion(
  'kind',
  [
    record({ kind: z.literal('variety'), varietyId: variety(), pieces: whole(1, EACH_MAX) }),
    record({ kind: z.literal('pack'), lines }),
    record({
      kind: z.literal('unnamed'),
      pieces: whole(1, EACH_MAX),
      among: list(variety(), 'varieties', 1, VARIETIES_MAX).nullable(),
    }),
    record({ kind: z.literal('kitchen'), varietyId: variety().nullable(), pieces: whole(1, EACH_MAX) }),
    record({ kind: z.literal('nothing') }),
  ],
  'null, or what the name means: of the "kind" "variety", "pack", "unnamed", "kitchen" or "nothing".',
)

export const meaningsSchema = record({
  names: list(record({ name: text(NAME_MAX), meaning: meaning.nullable() }), 'names', 1, NAMES_AT_ONCE),
})
