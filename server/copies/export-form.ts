import * as z from 'zod'

/** The files of an export, in open formats: JSON Lines, JSON, CSV (RFC 4180). */
export const EXPORT_FILES = {
  about: 'about.json',
  entries: 'entries.jsonl',
  refusals: 'refusals.jsonl',
  setUp: 'set-up.json',
  days: 'days.csv',
} as const

/** What an export says of itself, written last: a folder without it is none. */
export const EXPORT_ABOUT = z.object({
  form: z.literal(1, 'it is of another form than this release writes; use the release that wrote it, or a later one'),
  journalId: z.string().regex(/^[0-9a-f]{8,64}$/),
  /** Entries, of seq 1 to this. */
  seq: z.int().min(0),
  refusals: z.int().min(0),
  /** How the entries were folded to the state that `hash` is of. */
  foldVersion: z.int(),
  hash: z.string(),
  /** Of the files, as hex; what is told of an entry and not folded is proved by these. */
  sha256: z.object({ entries: z.string(), refusals: z.string() }),
  writtenAtMs: z.int(),
})
export type ExportAbout = z.infer<typeof EXPORT_ABOUT>

/** A line of `refusals.jsonl`: the answer to a command that was refused, so that a repeat of it gets the same. */
export const EXPORTED_REFUSAL = z.object({
  commandId: z.string().min(1),
  recordedAtMs: z.int().min(0),
  answer: z.looseObject({
    kind: z.literal('refused'),
    refusal: z.looseObject({ code: z.string(), params: z.record(z.string(), z.unknown()) }),
  }),
})

/** Of an entry what makes it one; its events are proved by folding them. */
export const EXPORTED_ENTRY = z.looseObject({
  seq: z.int().min(1),
  commandId: z.string().min(1),
  recordedAtMs: z.int().min(0),
  events: z.array(z.looseObject({ type: z.string(), v: z.int() })),
})
