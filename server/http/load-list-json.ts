import * as z from 'zod'
import { problemsOf } from '../../shared-core/shop/problems.ts'
import { list, record, whole } from '../../shared-core/shop/set-up-fields.ts'
import type { Typed, TypedRead } from './typed-load.ts'
import { CLOCK, LINES_MAX, LOADS_MAX, NAME_MAX, PIECES_MAX } from './typed-load.ts'

const CLOCK_RIGHT = 'A time of day such as "5:10", or null.'
const SHELF_RIGHT = 'The name or id of a shelf, or null.'
const VARIETY_RIGHT = 'The name or id of a variety.'
const DATE_RIGHT = 'A date, e.g. "2026-11-24".'
const LINE_RIGHT = 'A variety and its pieces: ["Sesame", 36].'

const variety = z.string(VARIETY_RIGHT).min(1, VARIETY_RIGHT).max(NAME_MAX, VARIETY_RIGHT)
const loadSchema = record({
  in: z.string(CLOCK_RIGHT).regex(CLOCK, CLOCK_RIGHT).nullish(),
  shelf: z.string(SHELF_RIGHT).max(NAME_MAX, SHELF_RIGHT).nullish(),
  lines: list(z.tuple([variety, whole(1, PIECES_MAX)], LINE_RIGHT), 'lines', 1, LINES_MAX),
})
/** The same schema describes it in the API's document. */
export const loadListSchema = record({
  date: z.iso.date(DATE_RIGHT).optional(),
  loads: list(loadSchema, 'loads', 0, LOADS_MAX),
})

/** A load list as JSON; `date`, `in` and `shelf` may be left out. */
export function readJson(raw: unknown): TypedRead {
  const parsed = loadListSchema.safeParse(raw)
  if (!parsed.success) return { ok: false, problems: problemsOf(parsed.error.issues, raw) }
  const { date = null, loads } = parsed.data
  const typed = loads.map(({ in: at, shelf, lines }, index) => ({
    at: at == null || at === '' ? null : placed(at, `/loads/${index}/in`),
    shelf: shelf == null || shelf === '' ? null : placed(shelf, `/loads/${index}/shelf`),
    lines: lines.map(([variety, pieces], line) => {
      return { variety: placed(variety, `/loads/${index}/lines/${line}/0`), pieces }
    }),
  }))
  return { ok: true, loads: typed, date }
}

function placed(value: string, path: string): Typed<string> {
  return { value, where: '', path }
}
