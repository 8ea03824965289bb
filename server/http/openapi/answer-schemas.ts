import * as z from 'zod'
import { ASK_CODES, REFUSAL_CODES } from '../../../shared-core/day/answers.ts'
import { HEALTH_CODES } from '../../../shared-core/live/health.ts'

/** What the API answers with, as it is described to others; a test holds every example's answer to it. */

const instant = () => z.int().min(0).meta({ description: 'Milliseconds since 1970-01-01T00:00:00Z.' })
const pieces = () => z.int()
const cents = () => z.int().meta({ description: 'Hundredths of the shop’s money.' })
const params = z.record(z.string(), z.union([z.string(), z.number(), z.null()]))
const label = () => z.iso.date().meta({ description: 'The local date of the day’s opening.' })

const taken = z.object({ kind: z.literal('taken'), seq: z.int() })
const asked = z.object({
  kind: z.literal('ask'),
  asks: z.array(z.object({ code: z.enum(ASK_CODES), params })),
})
const refused = z.object({
  kind: z.literal('refused'),
  refusal: z.object({ code: z.enum(REFUSAL_CODES), params }),
})
const answer = z.discriminatedUnion('kind', [taken, asked, refused])
const commandAnswer = z.object({
  commandId: z.string().nullable().meta({ description: 'Null where nothing had to be done.' }),
  answer,
})

const mistake = z.object({
  path: z.string().meta({ description: 'Where, as a JSON Pointer (RFC 6901); /rows/3 is line 3 of a file.' }),
  wrong: z.string(),
  right: z.string(),
})

const problem = z.object({
  type: z.literal('about:blank'),
  title: z.string(),
  status: z.int(),
  detail: z.string(),
  errors: z.array(mistake).optional(),
  commandId: z.string().optional(),
  answer: z.union([asked, refused]).optional(),
})

const row = z.object({ row: z.int().min(1), ...commandAnswer.shape })

const fate = z.object({ pieces: pieces(), cents: cents(), costCents: cents() })
const varietyId = () => z.string()
const spanMs = () => z.int().meta({ description: 'Milliseconds.' })
const missed = z.object({
  pieces: pieces(),
  cents: cents(),
  first: z.object({ varietyId: varietyId(), fromMs: instant(), forMs: spanMs() }).nullable(),
  byVariety: z.array(
    z.object({ varietyId: varietyId(), pieces: pieces(), cents: cents(), times: z.int(), goneMs: spanMs() }),
  ),
})
const figures = z.object({
  missed: missed
    .nullable()
    .meta({ description: 'What sold-out varieties would probably have sold; null: no sale known.' }),
  left: z
    .object({ dayOld: fate, given: fate, wasted: fate })
    .nullable()
    .meta({ description: 'What was left at the close; null while the day is open.' }),
  onTime: z.object({
    atOpen: z.object({ there: z.int(), of: z.int() }).nullable(),
    orders: z.null(),
    ovenEmptyByMs: z.int().nullable().meta({ description: 'Against the changeover; early is negative.' }),
  }),
  baked: z.object({ pieces: pieces(), crewMinutes: z.int().nullable(), dozensPerCrewHour: z.number().nullable() }),
  unexplained: z.object({ signed: pieces(), absolute: pieces(), thrownDough: pieces() }),
})

const day = z.object({
  label: label(),
  openedAtMs: instant(),
  closedAtMs: instant().nullable(),
  figures: figures.nullable(),
})

const entry = z
  .object({
    seq: z.int().min(1),
    commandId: z.string(),
    deviceId: z.string(),
    recordedAtMs: instant(),
    told: z.looseObject({ type: z.string() }),
    events: z.array(z.looseObject({ type: z.string(), v: z.int(), atMs: instant() })),
  })
  .meta({ description: 'One accepted command and what happened by it.' })

const state = z
  .looseObject({ seq: z.int(), recordedAtMs: instant() })
  .meta({ description: 'The running shop as JSON. Its form belongs to its foldVersion and may change with a release.' })

const clock = z.object({
  zone: z.string(),
  offsets: z.array(z.object({ fromMs: instant(), offsetMinutes: z.number() })),
})

const healthReason = z.object({
  code: z.enum(HEALTH_CODES),
  level: z.enum(['note', 'warning', 'failing']),
  params,
  text: z.string().meta({ description: 'The same as an English sentence.' }),
})

export const ANSWERS = {
  Problem: problem,
  CommandAnswer: commandAnswer,
  CommandAnswers: z.array(commandAnswer),
  RowAnswers: z.object({
    taken: z.int(),
    past: z.int().optional().meta({ description: 'Sales of days that are over: kept as past sales.' }),
    ignored: z.int().optional().meta({ description: 'Rows of what the desk has said to be no pieces of the shop.' }),
    rows: z.array(row),
    errors: z.array(mistake).optional(),
  }),
  Health: z.object({
    status: z.enum(['ok', 'warning', 'failing']),
    version: z.string(),
    journalId: z.string(),
    seq: z.int(),
    demo: z.boolean(),
    reasons: z.array(healthReason),
  }),
  State: z.object({ journalId: z.string(), foldVersion: z.int(), hash: z.string(), state }),
  Entries: z.object({ entries: z.array(entry), lastSeq: z.int() }),
  Days: z.array(day),
  Figures: day,
  DayRecord: z.object({
    label: label(),
    openedAtMs: instant(),
    closedAtMs: instant().nullable(),
    foldVersion: z.int(),
    start: state,
    entries: z.array(entry),
    clock,
  }),
  Addresses: z.array(z.object({ url: z.url(), kind: z.enum(['name', 'address']) })),
  SetUpVersions: z.array(
    z.looseObject({ seq: z.int(), atMs: instant(), device: z.string().nullable(), told: z.array(z.unknown()) }),
  ),
  SetUpAnswer: z.looseObject({ answer: z.looseObject({ kind: z.enum(['taken', 'ask', 'refused']) }) }),
} as const
