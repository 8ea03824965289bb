import type { MixAsked } from '../../../shared-core/day/dough-commands.ts'
import { doughId, formulaId, ingredientId, preparationId } from '../../../shared-core/ids.ts'
import type { Formula, Ingredient, IngredientKind } from '../../../shared-core/shop/formula.ts'
import type { Language, Shop } from '../../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import { epochMs, spanMs } from '../../../shared-core/units.ts'
import { celsius, g, kg, poolish } from '../../core/dough/acts-shop.ts'
import { doughRoom } from '../../core/dough/kitchen.ts'
import { formula } from '../../core/dough/room-mix.ts'
import { ALL_STATIONS, dough, dwell, table, variety } from '../../core/support/shop.ts'
import { shopAtHour } from './counter-glass.ts'
import type { ShopServer } from './shop-server.ts'

export interface DoughShop {
  /** What the clock on the shop's wall shows now. */
  readonly hour: number
  readonly language?: Language
  /** A mix takes its usual time; else it is over within seconds. */
  readonly isSlow?: boolean
  readonly parts?: Partial<Shop>
}

/**
 * An invented shop with a dough room in which a mix is over within seconds: plain dough in two weights, raisin with
 * mix-ins, a sour dough with a poolish and folds. Windows of proof and cooler are those of the tests' shop.
 */
export function doughShop({ hour, language = 'en', isSlow = false, parts = {} }: DoughShop): Shop {
  const shop = shopAtHour(hour, {
    mixer: { name: 'Spiral', washMs: spanMs(5, 'min'), leastFlour: kg(2), mostFlour: kg(25) },
    cooler: { trays: 40, keepsAt: { degrees: 38, unit: 'F' } },
    doughRoom: doughRoom({ proofTrays: 24, coolerByMinute: 1_320 }),
    ingredients: table(INGREDIENTS),
    preparations: table([poolish()]),
    formulas: table(isSlow ? [PLAIN, RAISIN, SOUR].map(slow) : [PLAIN, RAISIN, SOUR]),
    doughs: table([
      dough({ id: 'plain', order: 1, formulaId: formulaId('plain'), pieceWeight: g(113), shapedBy: 'divider' }),
      dough({ id: 'mini', order: 2, formulaId: formulaId('plain'), pieceWeight: g(57), trayPieces: 30 }),
      dough({ id: 'raisin', order: 3, formulaId: formulaId('raisin'), pieceWeight: g(113) }),
      dough({ id: 'sour', order: 4, formulaId: formulaId('sour'), pieceWeight: g(120), labelWeight: g(95) }),
    ]),
    varieties: table([
      variety({ id: 'plain', order: 1, topping: 'none' }),
      variety({ id: 'sesame', order: 2 }),
      variety({ id: 'mini', order: 3, doughId: doughId('mini'), size: 'mini' }),
      variety({ id: 'raisin', order: 4, doughId: doughId('raisin'), decidedAt: 'mixer', topping: 'none' }),
      variety({ id: 'sour', order: 5, doughId: doughId('sour'), topping: 'none' }),
    ]),
    stations: table(ALL_STATIONS),
    ...parts,
  })
  return { ...shop, profile: { ...shop.profile, language } }
}

function ingredient(id: string, order: number, kind: IngredientKind, name: string): Ingredient {
  const contains = kind === 'flour' ? (['wheat'] as const) : []
  return { id: ingredientId(id), name, order, kind, contains, price: null, bag: null, retired: false }
}

const INGREDIENTS = [
  ingredient('flour', 1, 'flour', 'High-gluten flour'),
  ingredient('water', 2, 'water', 'Water'),
  ingredient('salt', 3, 'salt', 'Salt'),
  ingredient('malt', 4, 'malt', 'Barley malt'),
  ingredient('yeast', 5, 'yeast', 'Yeast'),
  ingredient('raisins', 6, 'mixIn', 'Raisins'),
]

const at = 'start' as const
const BASE: Formula['lines'] = [
  { ingredientId: ingredientId('flour'), percent: 100_000, at },
  { ingredientId: ingredientId('water'), percent: 57_000, at },
  { ingredientId: ingredientId('salt'), percent: 2_000, at },
  { ingredientId: ingredientId('malt'), percent: 1_500, at },
  { ingredientId: ingredientId('yeast'), percent: 600, at },
]

const SHORT = { mixMs: spanMs(2, 's'), restMs: spanMs(1, 's'), lossPercent: 1_000, doughAt: celsius(25) }
const PLAIN = formula({ id: 'plain', name: 'Plain', order: 1, lines: BASE, ...SHORT })
const RAISIN = formula({
  id: 'raisin',
  name: 'Raisin',
  order: 2,
  lines: [...BASE, { ingredientId: ingredientId('raisins'), percent: 22_000, at: 'mixIn' }],
  ...SHORT,
  mixInMs: spanMs(1, 's'),
})
const SOUR = formula({
  id: 'sour',
  name: 'Sour',
  order: 3,
  lines: BASE,
  preparations: [{ preparationId: preparationId('poolish'), percent: 20_000 }],
  bulk: { window: dwell(60, 90, 120, 'min'), foldsMs: [spanMs(30, 'min')], chill: null },
})

function slow(one: Formula): Formula {
  const mixInMs = one.mixInMs === null ? null : spanMs(10, 'min')
  return { ...one, mixMs: spanMs(12, 'min'), mixInMs, restMs: spanMs(7, 'min') }
}

/** The shop's date so many days from now; its zone is whole hours from UTC. */
export function dateIn(shop: Shop, days: number): string {
  return new Date(Date.now() + aheadMs(shop) + days * 24 * HOUR_MS).toISOString().slice(0, 10)
}

/** The shop's noon of a date. */
export function noonIn(shop: Shop): (isoDate: string) => EpochMs {
  return (isoDate) => epochMs(Date.parse(`${isoDate}T12:00:00Z`) - aheadMs(shop))
}

const HOUR_MS = 3_600_000

function aheadMs({ profile }: Shop): number {
  return -Number(/[+-]\d+$/.exec(profile.zone)?.[0] ?? 0) * HOUR_MS
}

/** Something at every station: mixes to weigh, mixing, in bulk and at the bench, trays that proof, are ready, chill and are over. */
export async function busyRoom(server: ShopServer, shop: Shop): Promise<void> {
  const date = dateIn(shop, 1)
  const nowMs = Date.now()
  const asked = (formula: string, gives: Readonly<Record<string, number>>, startInMin: number): MixAsked => ({
    formulaId: formulaId(formula),
    flourMilligrams: 9_000_000,
    startAtMs: epochMs(nowMs + startInMin * 60_000),
    gives: Object.entries(gives).map(([id, pieces]) => ({ doughId: doughId(id), pieces })),
  })
  const mixes = [
    asked('plain', { plain: 60, mini: 60 }, -60),
    asked('raisin', { raisin: 90 }, -30),
    asked('sour', { sour: 90 }, -20),
    ...Array.from({ length: 4 }, (_, n) => asked('plain', { plain: 120 }, 5 + 90 * n)),
    asked('sour', { sour: 60 }, 240),
  ]
  await server.act({ type: 'planMixes', date, mixes })
  const [atBench, mixing, inBulk] = [...(await server.state()).mixes.values()].sort((a, b) => a.order - b.order)
  if (atBench === undefined || mixing === undefined || inBulk === undefined) throw new Error('three mixes')
  await server.act({ type: 'moveMix', mixId: inBulk.id, from: 'planned', to: 'bulk' })
  await server.act({ type: 'moveMix', mixId: atBench.id, from: 'planned', to: 'bench' })
  const proof = { type: 'shape', varietyId: null, stage: 'proof', mixId: atBench.id } as const
  await server.act({ ...proof, doughId: doughId('plain'), pieces: 45, place: '1-4' })
  await server.act({ type: 'moveMix', mixId: mixing.id, from: 'planned', to: 'mixing' })
  const carry = { type: 'carryIn', varietyId: null } as const
  for (const hours of [70, 45, 30, 12, 2]) {
    const sinceMs = epochMs(nowMs - hours * HOUR_MS)
    await server.act({ ...carry, doughId: doughId('plain'), pieces: 30 + hours, stage: 'chill', sinceMs })
  }
  const sinceMs = epochMs(nowMs - 1.15 * HOUR_MS)
  await server.act({ ...carry, doughId: doughId('mini'), pieces: 60, stage: 'proof', sinceMs })
}
