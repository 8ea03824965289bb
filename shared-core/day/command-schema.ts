import { z } from 'zod'
import type { VarietyId } from '../ids.ts'
import { orderCommands } from '../orders/order-command-schema.ts'
import type { Problem } from '../shop/problem.ts'
import { pointer, problemsOf } from '../shop/problems.ts'
import { flag, list, oneOf, record, whole } from '../shop/set-up-fields.ts'
import { BOARDS_MAX, DEGREES_MAX, DEGREES_MIN, KEPT_MAX } from '../shop/set-up-limits.ts'
import { changeMisfits } from '../shop/set-up-rules.ts'
import { BATCH_STAGES } from '../shop/stages.ts'
import type { DurationMs } from '../units.ts'
import { durationMs } from '../units.ts'
import { command, commandIdField, date, ids, instant, PIECES_MAX, pieces, place } from './command-fields.ts'
import type { Command } from './commands.ts'
import { UNSURE_MAX } from './decision.ts'
import { doughCommands } from './dough-command-schema.ts'
import { NOTE_CHARACTERS_MAX } from './note-text.ts'
import { CARE_KINDS } from './said.ts'
import { setUpChangeSchema } from './set-up-change-schema.ts'

/** Varieties of one load, sale or keep. */
export const LINES_MAX = 40
export const LOADS_MAX = 200
const FORBIDS_MAX = 50
/** A sweep in which nearly half-dozens are counted is right to within this. */
export const WITHIN_MAX = 60
const LOOK_AGAIN_MS_MAX = 6 * 3_600_000
export const SLIP_MS_MAX = 6 * 3_600_000
/** A crew of 40 for a long day. */
const CREW_MINUTES_MAX = 40 * 16 * 60
const CHANGES_MAX = 4 * KEPT_MAX

export type CommandParsed =
  | { readonly ok: true; readonly command: Command }
  | { readonly ok: false; readonly problems: readonly Problem[] }

/**
 * Reads a command that came in from outside: its form and bounds only; what it means for the shop is for `decide`.
 * @param checks what only the machine that reads it can tell; left out, any name of a zone is taken
 * @returns the command, or what is wrong with it and what would be right. Never throws.
 */
export function parseCommand(raw: unknown, checks = ANY_ZONE): CommandParsed {
  const read = commandSchema.safeParse(raw)
  if (!read.success) return { ok: false, problems: problemsOf(read.error.issues, raw) }
  const problems = setUpProblems(read.data, checks)
  return problems.length > 0 ? { ok: false, problems } : { ok: true, command: read.data }
}

const ANY_ZONE = { isZone: (_name: string) => true }

function setUpProblems(command: Command, { isZone }: typeof ANY_ZONE): Problem[] {
  if (command.type !== 'changeSetUp') return []
  return command.changes.flatMap((change, index) => {
    const at = (field: string) => `${pointer(['changes', index, 'value'])}${field === '' ? '' : `/${field}`}`
    const misfits = changeMisfits(change).map(({ field, wrong, right }) => ({ path: at(field), wrong, right }))
    if (change.entity !== 'profile' || isZone(change.value.zone)) return misfits
    const wrong = `No time zone is called "${change.value.zone}".`
    return [...misfits, { path: at('zone'), wrong, right: 'A name of the IANA database, e.g. "America/Chicago".' }]
  })
}

const stageBefore = oneOf(['proof', 'chill', 'rack'])
const phase = oneOf(['first-side', 'second-side'])
const lines = list(record({ varietyId: ids.variety, pieces: pieces() }), 'lines', 1, LINES_MAX).superRefine(eachOnce)

function eachOnce(all: readonly { readonly varietyId: VarietyId }[], ctx: z.RefinementCtx): void {
  all.forEach(({ varietyId: variety }, index) => {
    if (all.findIndex((line) => line.varietyId === variety) === index) return
    const params = { wrong: `"${variety}" stands in an earlier line already.` }
    ctx.addIssue({ code: 'custom', path: [index, 'varietyId'], message: 'Each variety in one line.', params })
  })
}

const dough = { doughId: ids.dough, varietyId: ids.variety.nullable(), pieces: pieces() }

const lineCommands = [
  command('shape', {
    ...dough,
    stage: stageBefore,
    mixId: ids.mix.exactOptional(),
    isLast: flag().exactOptional(),
    place: place().exactOptional(),
  }),
  command('carryIn', { ...dough, stage: stageBefore, sinceMs: instant().nullable() }),
  command('pull', dough),
  command('dip', dough),
  command('lift', { batchId: ids.batch }),
  command('board', { lines }),
  command('moveBatch', {
    batchId: ids.batch,
    from: oneOf(BATCH_STAGES),
    to: oneOf(['proof', 'chill', 'rack', 'kettle', 'boards']),
    pieces: pieces(),
  }),
  command('load', { shelfId: ids.shelf, plannedId: ids.planned.nullable(), lines }),
  command('changeLoad', { loadId: ids.load, lines }),
  command('flip', { loadId: ids.load }),
  command('out', { loadId: ids.load, from: phase, lines: lines.nullable() }),
  command('moveLoad', {
    loadId: ids.load,
    from: phase,
    to: oneOf(['first-side', 'second-side', 'boards']),
    shelfId: ids.shelf,
  }),
  command('wasteBatch', { batchId: ids.batch, from: oneOf(BATCH_STAGES), pieces: pieces() }),
  command('confirmPresumed', { unsureIds: list(ids.unsure, 'ids', 1, UNSURE_MAX) }),
] as const

const careCommands = [
  command('care', { care: oneOf(CARE_KINDS) }),
  command('setBoards', { usable: whole(0, BOARDS_MAX) }),
] as const

const source = oneOf(['tap', 'till'])
const counted = record({ varietyId: ids.variety, pieces: whole(0, PIECES_MAX), within: whole(0, WITHIN_MAX) })

const stockCommands = [
  command('sell', { lines, from: source.exactOptional() }),
  command('sellUnnamed', { pieces: pieces(), from: source.exactOptional() }),
  command('remove', { varietyId: ids.variety, pieces: pieces(), fate: oneOf(['kitchen', 'wasted', 'given']) }),
  command('count', { varietyId: ids.variety, pieces: whole(0, PIECES_MAX) }),
  command('sweep', { counts: list(counted, 'counts', 1, LINES_MAX).superRefine(eachOnce) }),
  command('lastOneGone', { varietyId: ids.variety }),
  command('dayOldIn', { lines }),
  command('dayOldOut', {
    varietyId: ids.variety,
    pieces: pieces(),
    fate: oneOf(['sold', 'kitchen', 'wasted', 'given']),
  }),
  command('keep', { lines, orderId: ids.order.exactOptional() }),
  command('release', { keepId: ids.keep }),
  command('handOver', { keepId: ids.keep }),
] as const

export const forbid = record({
  shelfId: ids.shelf.nullable(),
  varietyId: ids.variety.nullable(),
  fromMs: instant(),
  toMs: instant(),
}).superRefine(({ fromMs, toMs }, ctx) => {
  if (fromMs < toMs) return
  const params = { wrong: `It ends at ${toMs}, and begins at ${fromMs}.` }
  ctx.addIssue({ code: 'custom', path: ['toMs'], message: 'An instant after "fromMs".', params })
})

export const plannedLoad = record({ shelfId: ids.shelf.nullable(), inAtMs: instant().nullable(), lines })

export const FILE_NAME_MAX = 200
const fileName = `The name of a file, at most ${FILE_NAME_MAX} characters.`
const sum = 'The SHA-256 of the file, 64 digits from 0 to 9 and a to f.'
const IMPORT_ROWS_MAX = 1_000_000_000

const dayCommands = [
  command('openDay', {}),
  command('closeDay', { label: date().exactOptional(), crewMinutes: whole(0, CREW_MINUTES_MAX).exactOptional() }),
  command('reopenDay', { label: date() }),
  command('setLoadList', { loads: list(plannedLoad, 'loads', 0, LOADS_MAX) }),
  command('skipPlanned', { plannedId: ids.planned }),
  command('forbidLoads', { forbids: list(forbid, 'forbidden spans', 0, FORBIDS_MAX) }),
  command('changeSetUp', {
    changes: list(setUpChangeSchema, 'changes', 1, CHANGES_MAX),
    fromMs: instant().exactOptional(),
  }),
  command('dropSetUp', { setUpId: ids.setUp }),
  command('takeUpSetUps', {}),
  command('noteImport', {
    name: z.string(fileName).trim().min(1, fileName).max(FILE_NAME_MAX, fileName),
    sha256: z.string(sum).regex(/^[0-9a-f]{64}$/, sum),
    rows: whole(0, IMPORT_ROWS_MAX),
    from: date(),
    to: date(),
  }),
  command('takeBack', { commandId: commandIdField() }),
] as const

const someone = ids.person.nullable()
const stepOf = { stepId: ids.step, doughId: ids.dough.nullable(), personId: someone }
const noteText = 'A line of text, at most 120 characters.'

const listCommands = [
  command('doStep', stepOf),
  command('giveStep', stepOf),
  command('testFloat', {
    doughId: ids.dough,
    passed: flag(),
    lookAgainMs: whole(60_000, LOOK_AGAIN_MS_MAX)
      .transform((ms): DurationMs => durationMs(ms))
      .nullable(),
    personId: someone,
  }),
  command('writeNote', { text: z.string(noteText).trim().min(1, noteText).max(NOTE_CHARACTERS_MAX, noteText) }),
  command('clearNote', { noteId: ids.note }),
  command('slipChangeover', { slipMs: whole(-SLIP_MS_MAX, SLIP_MS_MAX) }),
  command('changeOverShelf', { shelfId: ids.shelf, to: oneOf(['secondMenu', 'bagels']) }),
  command('readOven', {
    shelfId: ids.shelf.nullable(),
    degrees: whole(DEGREES_MIN, DEGREES_MAX),
    unit: oneOf(['C', 'F']),
  }),
] as const

export const commandSchema = z.discriminatedUnion(
  'type',
  [
    ...lineCommands,
    ...careCommands,
    ...stockCommands,
    ...dayCommands,
    ...listCommands,
    ...doughCommands,
    ...orderCommands,
  ],
  'A command of a type that is known here.',
)
