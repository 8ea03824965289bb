import { z } from 'zod'
import { flag, list, oneOf, record, whole } from '../shop/set-up-fields.ts'
import { KEPT_MAX, WEIGHT_THOUSANDTHS_MAX } from '../shop/set-up-limits.ts'
import { command, date, ids, instant, PIECES_MAX, pieces, place } from './command-fields.ts'
import {
  DAY_MIXES_MAX,
  FOLDS_MAX,
  MIXES_MAX,
  SAMPLE_PIECES_MAX,
  THOUSANDTHS_MAX,
  THOUSANDTHS_MIN,
  WANTED_LINES_MAX,
} from './dough-limits.ts'

/** A tonne of flour in one mix, or of a preparation. */
const MILLIGRAMS_MAX = 1_000_000_000

const degrees = () => record({ thousandths: whole(THOUSANDTHS_MIN, THOUSANDTHS_MAX), unit: oneOf(['C', 'F']) })
const weight = (least: number) =>
  record({ thousandths: whole(least, WEIGHT_THOUSANDTHS_MAX), unit: oneOf(['g', 'kg', 'oz', 'lb']) })
const milligrams = () => whole(1, MILLIGRAMS_MAX)

/** No two entries of a list are of the same thing. */
function eachOnce<Entry>(keyOf: (entry: Entry) => string, field: string, what: string) {
  return (all: readonly Entry[], ctx: z.RefinementCtx): void => {
    const seen = new Set<string>()
    all.forEach((entry, index) => {
      const key = keyOf(entry)
      if (seen.has(key)) {
        const params = { wrong: `"${key}" stands in an earlier line already.` }
        ctx.addIssue({ code: 'custom', path: [index, field], message: `Each ${what} in one line.`, params })
      }
      seen.add(key)
    })
  }
}

const wantedLine = record({
  doughId: ids.dough,
  varietyId: ids.variety.nullable(),
  pieces: whole(0, PIECES_MAX),
  ordered: whole(0, PIECES_MAX),
  advised: whole(0, PIECES_MAX).exactOptional(),
})

const mixAsked = record({
  formulaId: ids.formula,
  flourMilligrams: milligrams(),
  startAtMs: instant().nullable(),
  gives: list(record({ doughId: ids.dough, pieces: pieces() }), 'doughs', 0, 16).superRefine(
    eachOnce(({ doughId }) => doughId, 'doughId', 'dough'),
  ),
})

/** The id of an ingredient or preparation; one that is added at both times ends in `+` at the later. */
const lineKey = () => {
  const right = 'The key of a line of the mix sheet.'
  return z.string(right).regex(/^[a-z0-9][a-z0-9.-]{0,63}\+?$/, right)
}

const counted = record({ ingredientId: ids.ingredient, weight: weight(0).nullable() })

export const doughCommands = [
  command('setWanted', {
    date: date(),
    lines: list(wantedLine, 'lines', 0, WANTED_LINES_MAX).superRefine(
      eachOnce(
        (line) => (line.varietyId === null ? line.doughId : `${line.doughId} ${line.varietyId}`),
        'doughId',
        'dough or variety',
      ),
    ),
  }),
  command('planMixes', { date: date(), mixes: list(mixAsked, 'mixes', 0, DAY_MIXES_MAX) }),
  command('orderMixes', {
    mixes: list(record({ mixId: ids.mix, startAtMs: instant().nullable() }), 'mixes', 1, MIXES_MAX).superRefine(
      eachOnce(({ mixId }) => mixId, 'mixId', 'mix'),
    ),
  }),
  command('dropMix', { mixId: ids.mix }),
  command('weighLine', { mixId: ids.mix, line: lineKey(), done: flag() }),
  command('readMix', {
    mixId: ids.mix,
    temp: oneOf(['room', 'flour', 'preferment', 'tap', 'water', 'dough']),
    read: degrees(),
  }),
  command('moveMix', {
    mixId: ids.mix,
    from: oneOf(['planned', 'mixing', 'rest', 'bulk', 'bulkChill', 'bench', 'ended']),
    to: oneOf(['mixing', 'rest', 'bulk', 'bulkChill', 'bench']),
  }),
  command('foldMix', { mixId: ids.mix, fold: whole(1, FOLDS_MAX) }),
  command('endMix', { mixId: ids.mix, left: oneOf(['lost', 'spoilt']) }),
  command('placeBatch', { batchId: ids.batch, place: place().nullable() }),
  command('readPlace', { place: oneOf(['room', 'cooler', 'flour', 'tap']), read: degrees() }),
  command('countIngredients', {
    counts: list(counted, 'counts', 1, KEPT_MAX).superRefine(
      eachOnce(({ ingredientId }) => ingredientId, 'ingredientId', 'ingredient'),
    ),
  }),
  command('receiveIngredient', { ingredientId: ids.ingredient, weight: weight(1) }),
  command('makePreparation', {
    preparationId: ids.preparation,
    milligrams: milligrams(),
    forDate: date().nullable(),
  }),
  command('dropBuild', { buildId: ids.build }),
  command('weighPieces', {
    doughId: ids.dough,
    mixId: ids.mix.nullable(),
    weights: list(weight(1), 'weights', 1, SAMPLE_PIECES_MAX),
  }),
] as const
