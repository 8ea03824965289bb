import type { DoughRoom, Formula, Ingredient, MadeOf, Preparation } from './formula.ts'
import { clockText, spanText } from './human-time.ts'
import type { Misfit, Rule, Whose } from './misfit.ts'
import { broken } from './misfit.ts'
import { DOUGH_CELSIUS_MAX, DOUGH_CELSIUS_MIN, PIECE_MG_MAX, PIECE_MG_MIN } from './set-up-limits.ts'
import type { Allergen, Dough, DwellWindow, Weight } from './shop.ts'
import { degreesText, milliCelsiusOf } from './temperature.ts'
import { milligrams, weightText } from './weight.ts'
import { unorderedWindow } from './window-rules.ts'

/** What does not fit inside one ingredient, preparation or formula, or in the dough room, whatever else the shop has. */

export function ingredientMisfits({ id, contains }: Ingredient): Misfit[] {
  return broken({ entity: 'ingredient', id }, [allergenTwice(contains)])
}

export function allergenTwice(contains: readonly Allergen[]): Rule {
  const twice = repeated(contains)
  return [twice !== undefined, 'contains', `"${twice}" is named twice.`, 'Each allergen once.']
}

/** What goes onto a topping's piece. */
export function madeOfTwice(madeOf: readonly MadeOf[]): Rule {
  const twice = repeated(madeOf.map(({ ingredientId }) => ingredientId))
  return [twice !== undefined, 'madeOf', `"${twice}" stands twice.`, 'Each ingredient once.']
}

export function preparationMisfits(preparation: Preparation): Misfit[] {
  const { id, kind, lines, seedPercent, fedWith, ready } = preparation
  const twice = repeated(lines.map(({ ingredientId }) => ingredientId))
  const isSoaker = kind === 'soaker'
  const unfed = 'Not fed, or the percent of seed that it is built from.'
  return broken({ entity: 'preparation', id }, [
    [twice !== undefined, 'lines', `"${twice}" stands twice.`, 'Each ingredient once.'],
    [isSoaker && seedPercent > 0, 'seedPercent', 'A soaker is built from seed.', '0: only pre-ferments are.'],
    [isSoaker && fedWith !== null, 'fedWith', 'A soaker is fed.', 'Not fed: only cultures are.'],
    [!isSoaker && fedWith !== null && seedPercent === 0, 'fedWith', 'It is fed, and not built from seed.', unfed],
    ...windowRule(ready, 'ready'),
  ])
}

export function formulaMisfits(formula: Formula): Misfit[] {
  const whose = { entity: 'formula', id: formula.id } as const
  return [
    ...broken(whose, lineRules(formula)),
    ...broken(whose, mixInRules(formula)),
    ...broken(whose, bulkRules(formula.bulk)),
    ...broken(whose, [warmth(formula.doughAt, 'doughAt', 'The dough is wished', DOUGH)]),
  ]
}

/** An ingredient may come in two parts, at the start and with the mix-ins. */
function lineRules({ lines, preparations }: Formula): Rule[] {
  const twice = repeated(lines.map(({ ingredientId, at }) => `${ingredientId} ${at}`))?.split(' ')[0]
  const again = repeated(preparations.map(({ preparationId }) => preparationId))
  return [
    [twice !== undefined, 'lines', `"${twice}" stands twice.`, 'Each ingredient once at the start, once as a mix-in.'],
    [again !== undefined, 'preparations', `"${again}" stands twice.`, 'Each preparation once.'],
  ]
}

function mixInRules({ lines, mixMs, mixInMs }: Formula): Rule[] {
  const hasMixIns = lines.some(({ at }) => at === 'mixIn')
  const mix = spanText(mixMs, 'min')
  const late = `Mix-ins go in after ${mixInMs === null ? '' : spanText(mixInMs, 'min')}, when mixing is over.`
  return [
    [
      hasMixIns && mixInMs === null,
      'mixInMs',
      'There are mix-ins and no time for them.',
      `Within the ${mix} of mixing.`,
    ],
    [
      !hasMixIns && mixInMs !== null,
      'mixInMs',
      'There is a time for mix-ins and no mix-in.',
      'None of the two, or both.',
    ],
    [mixInMs !== null && mixInMs > mixMs, 'mixInMs', late, `${mix} or before.`],
  ]
}

function bulkRules(bulk: Formula['bulk']): Rule[] {
  if (bulk === null) return []
  const { window, foldsMs, chill } = bulk
  const latest = spanText(window.latestMs, window.unit)
  const last = foldsMs[foldsMs.length - 1]
  const backwards = foldsMs.some((ms, at) => at > 0 && ms <= (foldsMs[at - 1] ?? 0))
  const late = last === undefined ? '' : `A fold after ${spanText(last, 'min')}, when the bulk ferment is over.`
  return [
    ...windowRule(window, 'bulk/window'),
    ...(chill === null ? [] : windowRule(chill, 'bulk/chill')),
    [backwards, 'bulk/foldsMs', 'A fold comes no later than the one before it.', 'Each later than the one before.'],
    [!backwards && last !== undefined && last > window.latestMs, 'bulk/foldsMs', late, `Within ${latest}.`],
  ]
}

interface Bounds {
  readonly from: number
  readonly to: number
}
/** In °C. What lies outside is a mistake in the number or its unit. */
const DOUGH: Bounds = { from: DOUGH_CELSIUS_MIN, to: DOUGH_CELSIUS_MAX }
const AIR: Bounds = { from: 0, to: 50 }
const FLOUR: Bounds = { from: -20, to: 50 }
const WATER: Bounds = { from: 0, to: 100 }

export function doughRoomMisfits(room: DoughRoom): Misfit[] {
  const { fromMinute, coolerByMinute, tapAt, hotTapAt } = room
  const whose: Whose = { entity: 'doughRoom', id: null }
  const [from, by] = [clockText(fromMinute), clockText(coolerByMinute)]
  const early = `The last tray is in the cooler by ${by}, and work begins at ${from}.`
  const cold = `The hot tap runs at ${degreesText(hotTapAt)}, colder than the cold one.`
  return broken(whose, [
    [fromMinute >= coolerByMinute, 'coolerByMinute', early, `After ${from}.`],
    warmth(room.roomAt, 'roomAt', 'The room is', AIR),
    warmth(room.flourAt, 'flourAt', 'The flour is', FLOUR),
    warmth(tapAt, 'tapAt', 'The tap runs', AIR),
    warmth(hotTapAt, 'hotTapAt', 'The hot tap runs', WATER),
    [milliCelsiusOf(hotTapAt) < milliCelsiusOf(tapAt), 'hotTapAt', cold, `${degreesText(tapAt)} or more.`],
    warmth(room.provesAt, 'provesAt', 'Doughs proof', DOUGH),
  ])
}

function warmth(at: DoughRoom['roomAt'], field: string, what: string, { from, to }: Bounds): Rule {
  const milli = milliCelsiusOf(at)
  const right = `From ${from} °C to ${to} °C (${inFahrenheit(from)} °F to ${inFahrenheit(to)} °F); is the unit right?`
  return [milli < from * 1_000 || milli > to * 1_000, field, `${what} at ${degreesText(at)}.`, right]
}

function inFahrenheit(celsius: number): number {
  return (celsius * 9) / 5 + 32
}

/** A dough that is mixed by a formula is divided by weight; a piece of some pounds is one of some ounces. */
export function weightRules({ formulaId, pieceWeight, labelWeight }: Dough): Rule[] {
  const unsaid = `Mixed by "${formulaId}", and nobody has said what a piece weighs.`
  return [
    [formulaId !== null && pieceWeight === null, 'pieceWeight', unsaid, 'The weight of one piece as it is shaped.'],
    pieceRule(pieceWeight, 'pieceWeight'),
    pieceRule(labelWeight, 'labelWeight'),
  ]
}

function pieceRule(weight: Weight | null, field: string): Rule {
  if (weight === null) return [false, field, '', '']
  const size = milligrams(weight)
  const right = `From ${PIECE_MG_MIN / 1_000} g to ${PIECE_MG_MAX / 1_000} g; is the unit right?`
  return [size < PIECE_MG_MIN || size > PIECE_MG_MAX, field, `A piece weighs ${weightText(weight)}.`, right]
}

function windowRule(window: DwellWindow, field: string): Rule[] {
  const wrong = unorderedWindow(window)
  return wrong === null ? [] : [[true, field, wrong, 'None longer than the next: earliest, target, latest.']]
}

function repeated<Word extends string>(words: readonly Word[]): Word | undefined {
  return words.find((word, at) => words.indexOf(word) !== at)
}
