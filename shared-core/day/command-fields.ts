import { z } from 'zod'
import {
  batchId,
  buildId,
  commandId,
  doughId,
  formulaId,
  ingredientId,
  keepId,
  loadId,
  menuItemId,
  mixId,
  noteId,
  orderId,
  personId,
  plannedId,
  portionId,
  preparationId,
  runId,
  setUpId,
  shelfId,
  standingId,
  stepId,
  unsureId,
  varietyId,
} from '../ids.ts'
import { id, list, name, oneOf, record, whole } from '../shop/set-up-fields.ts'
import type { EpochMs } from '../units.ts'
import { epochMs } from '../units.ts'
import { ASK_CODES } from './answers.ts'
import type { Command } from './commands.ts'

/** The fields that commands are made of. */

/** Pieces of one line: a whole day's bake of one variety in a large shop, far from what overflows. */
export const PIECES_MAX = 5_000
/** 2020-01-01 and 2100-01-01: a clock that says something else is not set. */
export const AT_MS_MIN = 1_577_836_800_000
export const AT_MS_MAX = 4_102_444_800_000
export const COMMAND_ID_PATTERN = /^[a-z0-9]{10,40}$/
/** Rack and level, as they stand on a key. */
export const PLACE_CHARACTERS_MAX = 24

export const commandIdField = () => {
  const right = 'Between 10 and 40 small letters and digits.'
  return z.string(right).regex(COMMAND_ID_PATTERN, right).transform(commandId)
}
export const instant = () => whole(AT_MS_MIN, AT_MS_MAX).transform((ms): EpochMs => epochMs(ms))
export const pieces = () => whole(1, PIECES_MAX)
export const date = () => z.iso.date('A date, e.g. "2026-11-24".')
export const place = () => name(PLACE_CHARACTERS_MAX)

export const ids = {
  batch: id().transform(batchId),
  build: id().transform(buildId),
  dough: id().transform(doughId),
  formula: id().transform(formulaId),
  ingredient: id().transform(ingredientId),
  keep: id().transform(keepId),
  load: id().transform(loadId),
  menuItem: id().transform(menuItemId),
  mix: id().transform(mixId),
  note: id().transform(noteId),
  order: id().transform(orderId),
  person: id().transform(personId),
  planned: id().transform(plannedId),
  portion: id().transform(portionId),
  preparation: id().transform(preparationId),
  run: id().transform(runId),
  setUp: id().transform(setUpId),
  shelf: id().transform(shelfId),
  standing: id().transform(standingId),
  step: id().transform(stepId),
  unsure: id().transform(unsureId),
  variety: id().transform(varietyId),
}

/** What every command carries, and what one kind carries besides. */
export const command = <Type extends Command['type'], Shape extends z.ZodRawShape>(type: Type, shape: Shape) =>
  record({
    id: commandIdField(),
    deviceSeq: whole(1, Number.MAX_SAFE_INTEGER),
    tappedAtMs: instant().nullable(),
    seenSeq: whole(0, Number.MAX_SAFE_INTEGER).exactOptional(),
    seenCourse: id().exactOptional(),
    confirmed: list(oneOf(ASK_CODES), 'codes', 0, ASK_CODES.length).exactOptional(),
    type: oneOf([type]),
    ...shape,
  })
