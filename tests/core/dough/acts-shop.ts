import type { Act } from '../../../shared-core/day/commands.ts'
import type { MixAsked } from '../../../shared-core/day/dough-commands.ts'
import type { State } from '../../../shared-core/day/state.ts'
import type { Mix } from '../../../shared-core/dough/mix.ts'
import { doughId, formulaId, ingredientId, mixId, preparationId } from '../../../shared-core/ids.ts'
import type { Degrees, DoughRoom, Formula, Ingredient, Preparation } from '../../../shared-core/shop/formula.ts'
import type { Shop, Weight } from '../../../shared-core/shop/shop.ts'
import { must } from '../../../shared-core/support.ts'
import { durationMs, spanMs } from '../../../shared-core/units.ts'
import type { When } from '../support/play.ts'
import { play } from '../support/play.ts'
import { dough, dwell, shopWith, table } from '../support/shop.ts'
import { formula } from './room-mix.ts'

/**
 * A shop with a dough room: plain dough of flour, water and salt, shaped in two weights; a sour dough with a poolish, bulk
 * ferment, folds and a bulk chill; a raisin dough with mix-ins. All invented.
 */
export function roomShop(parts: Partial<Shop> = {}): Shop {
  return shopWith({
    mixer: { name: 'Spiral', washMs: spanMs(10, 'min'), leastFlour: kg(2), mostFlour: kg(25) },
    doughs: table([
      dough({ id: 'plain', order: 1, formulaId: formulaId('plain'), pieceWeight: g(120) }),
      dough({ id: 'mini', order: 2, formulaId: formulaId('plain'), pieceWeight: g(60) }),
      dough({ id: 'rye', order: 3, formulaId: formulaId('sour'), pieceWeight: g(100) }),
      dough({ id: 'raisin', order: 4, formulaId: formulaId('raisin'), pieceWeight: g(120) }),
      dough({ id: 'old', order: 5 }),
    ]),
    ingredients: table(['flour', 'water', 'salt', 'raisins'].map((id, order) => ingredient(id, order))),
    preparations: table([poolish()]),
    formulas: table([
      formula({ id: 'plain', order: 1, lines: BASE }),
      formula({
        id: 'sour',
        name: 'Sour',
        order: 2,
        lines: BASE,
        preparations: [{ preparationId: preparationId('poolish'), percent: 20_000 }],
        bulk: BULK,
      }),
      formula({
        id: 'raisin',
        name: 'Raisin',
        order: 3,
        lines: [...BASE, { ingredientId: ingredientId('raisins'), percent: 20_000, at: 'mixIn' }],
        mixInMs: spanMs(10, 'min'),
      }),
    ]),
    doughRoom: doughRoom(),
    ...parts,
  })
}

const BASE: Formula['lines'] = [
  { ingredientId: ingredientId('flour'), percent: 100_000, at: 'start' },
  { ingredientId: ingredientId('water'), percent: 55_000, at: 'start' },
  { ingredientId: ingredientId('salt'), percent: 2_000, at: 'start' },
]

const BULK: Formula['bulk'] = {
  window: dwell(60, 90, 120, 'min'),
  foldsMs: [spanMs(30, 'min'), spanMs(60, 'min')],
  chill: dwell(8, 12, 24, 'h'),
}

/** Flour and water in equal parts, ready from 8 to 16 h after it was begun. */
export function poolish(parts: Partial<Preparation> = {}): Preparation {
  return {
    id: preparationId('poolish'),
    name: 'Poolish',
    order: 1,
    kind: 'preferment',
    lines: [
      { ingredientId: ingredientId('flour'), percent: 100_000 },
      { ingredientId: ingredientId('water'), percent: 100_000 },
    ],
    seedPercent: 0,
    fedWith: null,
    ready: dwell(8, 12, 16, 'h'),
    retired: false,
    ...parts,
  }
}

function ingredient(id: string, order: number): Ingredient {
  const kind = id === 'raisins' ? 'mixIn' : (id as 'flour' | 'water' | 'salt')
  return { id: ingredientId(id), name: id, order, kind, contains: [], price: null, bag: null, retired: false }
}

function doughRoom(): DoughRoom {
  return {
    fromMinute: 360,
    coolerByMinute: 1_200,
    scaleStep: g(1),
    flourIn: 'none',
    surplusTo: null,
    dividerPiecesPerHour: null,
    handPiecesPerHour: 300,
    rollers: 2,
    proofTrays: null,
    roomAt: celsius(22),
    flourAt: celsius(20),
    tapAt: celsius(15),
    hotTapAt: celsius(50),
    hasIce: true,
    provesAt: celsius(24),
    coolsIn: durationMs(3_600_000),
  }
}

export function g(grams: number): Weight {
  return { thousandths: grams * 1_000, unit: 'g' }
}
export function kg(kilograms: number): Weight {
  return { thousandths: kilograms * 1_000, unit: 'kg' }
}
export function celsius(degrees: number): Degrees {
  return { thousandths: degrees * 1_000, unit: 'C' }
}

/** Ten kilograms of flour of a formula, for plain pieces unless said otherwise. */
export function asked(formula: string, gives: Readonly<Record<string, number>> = {}, flourKg = 10): MixAsked {
  return {
    formulaId: formulaId(formula),
    flourMilligrams: flourKg * 1_000_000,
    startAtMs: null,
    gives: Object.entries(gives).map(([id, pieces]) => ({ doughId: doughId(id), pieces })),
  }
}

export const TOMORROW = '2026-11-25'
export function planMixes(...mixes: readonly MixAsked[]): Act {
  return { type: 'planMixes', date: TOMORROW, mixes }
}

/** Plans mixes for tomorrow and says their ids. */
export function plan(state: State, mixes: readonly MixAsked[], when: When = {}): Mix['id'][] {
  const before = new Set(state.mixes.keys())
  play(state, planMixes(...mixes), when)
  return [...state.mixes.keys()].filter((id) => !before.has(id))
}

export function move(id: Mix['id'], from: Mix['stage'], to: 'mixing' | 'rest' | 'bulk' | 'bulkChill' | 'bench'): Act {
  return { type: 'moveMix', mixId: id, from, to }
}

export function shape(
  id: Mix['id'],
  pieces: number,
  parts: { readonly dough?: string; readonly isLast?: boolean } = {},
): Act {
  const isLast = parts.isLast === undefined ? {} : { isLast: parts.isLast }
  const doughOf = doughId(parts.dough ?? 'plain')
  return { type: 'shape', doughId: doughOf, varietyId: null, pieces, stage: 'proof', mixId: id, ...isLast }
}

export function mixOf(state: State, id: Mix['id']): Mix {
  return must(state.mixes, id)
}

/** Milligrams on hand by what the state says, before what stands in it took. */
export function onHand(state: State): Readonly<Record<string, number>> {
  return Object.fromEntries([...state.onHand.values()].map((one) => [one.ingredientId, one.milligrams]))
}

export const NO_MIX = mixId('none')
