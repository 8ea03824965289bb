import * as z from 'zod'
import type { Typed, TypedRead } from './typed-load.ts'
import { CLOCK, LINES_MAX, LOADS_MAX, PIECES_MAX } from './typed-load.ts'

const loadSchema = z.object({
  in: z.string().regex(CLOCK).nullish(),
  shelf: z.string().nullish(),
  lines: z
    .array(z.tuple([z.string(), z.number().int().min(1).max(PIECES_MAX)]))
    .min(1)
    .max(LINES_MAX),
})
/** The same schema describes it in the API's document. */
export const loadListSchema = z.object({ date: z.iso.date().optional(), loads: z.array(loadSchema).max(LOADS_MAX) })

const RIGHT = `{ "loads": [{ "in": "5:10", "shelf": "1", "lines": [["Sesame", 36]] }] }, at most ${LOADS_MAX} loads.`

/** A load list as JSON; `date`, `in` and `shelf` may be left out. */
export function readJson(raw: unknown): TypedRead {
  const parsed = loadListSchema.safeParse(raw)
  if (!parsed.success) {
    const problems = parsed.error.issues.map(({ path, message }) => {
      return { path: path.map((part) => `/${String(part)}`).join(''), wrong: `${message}.`, right: RIGHT }
    })
    return { ok: false, problems }
  }
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
