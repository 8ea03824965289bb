import fc from 'fast-check'
import { formulaId, ingredientId, preparationId } from '../../../shared-core/ids.ts'
import type {
  Degrees,
  DoughRoom,
  Formula,
  Ingredient,
  IngredientKind,
  Preparation,
} from '../../../shared-core/shop/formula.ts'
import type { Allergen, DwellWindow, Shop, Weight } from '../../../shared-core/shop/shop.ts'
import { ALLERGENS } from '../../../shared-core/shop/stages.ts'
import { durationMs } from '../../../shared-core/units.ts'

type Room = Pick<Shop, 'ingredients' | 'preparations' | 'formulas' | 'doughRoom'>

const KINDS: readonly IngredientKind[] = ['flour', 'flour', 'water', 'salt', 'yeast', 'malt', 'mixIn']

/** Any dough room whose parts fit: two flours, a pre-ferment and a soaker, mix-ins, folds, retired ones. */
export const anyDoughRoom: fc.Arbitrary<Room> = fc
  .record({
    ingredients: fc.tuple(...KINDS.map((kind) => anyIngredient(kind))),
    firstFlour: fc.integer({ min: 1, max: 99_999 }),
    water: fc.integer({ min: 45_000, max: 70_000 }),
    small: fc.array(fc.integer({ min: 100, max: 6_000 }), { minLength: 3, maxLength: 3 }),
    mixIn: fc.option(fc.integer({ min: 1_000, max: 50_000 })),
    preferment: fc.option(
      fc.record({ flour: fc.integer({ min: 1, max: 40 }), seed: fc.integer({ min: 0, max: 50_000 }) }),
    ),
    fedWith: fc.option(weight()),
    ready: window(),
    bulk: fc.option(fc.record({ window: window(), chill: fc.option(window()), folds: fc.subarray([0, 1, 2]) })),
    losses: fc.record({ lossPercent: percent(30), bakeLossPercent: percent(30) }),
    doughAt: fc.oneof(degrees('C', 15, 35), degrees('F', 60, 95)),
    friction: fc.oneof(degrees('C', 0, 60), degrees('F', 0, 120)),
    times: fc.record({ mixMs: ms(60_000, 3_600_000), mixInMs: ms(0, 60_000), restMs: ms(0, 43_200_000) }),
    rest: fc.record({
      strength: fc.integer({ min: 0, max: 9 }),
      daysAhead: fc.integer({ min: 1, max: 3 }),
      decideByMinute: fc.integer({ min: 0, max: 1_439 }),
    }),
    isOldKept: fc.boolean(),
    room: fc.option(anyRoom()),
  })
  .map((drawn): Room => {
    const ingredients = drawn.ingredients.map((one, at) => ({ ...one, id: id(at), name: `Part ${at}`, order: at * 2 }))
    const [firstFlour, water, small] = [drawn.firstFlour, drawn.water, drawn.small]
    const shares = [firstFlour, 100_000 - firstFlour, water, ...small]
    const preparation: Preparation = {
      id: preparationId('sponge'),
      name: 'Sponge',
      order: 3,
      kind: 'preferment',
      lines: [
        { ingredientId: id(firstFlour > 50_000 ? 0 : 1), percent: 100_000 },
        { ingredientId: id(2), percent: 60_000 },
      ],
      seedPercent: drawn.preferment?.seed ?? 0,
      fedWith: (drawn.preferment?.seed ?? 0) === 0 ? null : drawn.fedWith,
      ready: drawn.ready,
      retired: drawn.preferment === null,
    }
    const formula: Formula = {
      id: formulaId('plain'),
      name: 'Plain',
      order: 7,
      lines: [
        ...shares.map((share, at) => ({ ingredientId: id(at), percent: share, at: 'start' as const })),
        ...(drawn.mixIn === null ? [] : [{ ingredientId: id(6), percent: drawn.mixIn, at: 'mixIn' as const }]),
      ],
      preparations:
        drawn.preferment === null
          ? []
          : [{ preparationId: preparation.id, percent: drawn.preferment.flour * 1_000 + 1 }],
      ...drawn.losses,
      doughAt: drawn.doughAt,
      friction: drawn.friction,
      ...drawn.times,
      mixInMs: drawn.mixIn === null ? null : drawn.times.mixInMs,
      bulk: drawn.bulk === null ? null : bulkOf(drawn.bulk),
      ...drawn.rest,
      retired: false,
    }
    const old = { ...formula, id: formulaId('old'), name: 'Plain', order: 1, retired: true }
    return {
      ingredients: new Map(ingredients.map((one) => [one.id, one])),
      preparations: new Map([[preparation.id, preparation]]),
      formulas: new Map([[formula.id, formula], ...(drawn.isOldKept ? [[old.id, old] as const] : [])]),
      doughRoom: drawn.room,
    }
  })

function id(at: number) {
  return ingredientId(`i${at}`)
}

function bulkOf({
  window,
  chill,
  folds,
}: {
  readonly window: DwellWindow
  readonly chill: DwellWindow | null
  readonly folds: readonly number[]
}): Formula['bulk'] {
  const step = Math.floor(window.latestMs / 4)
  return { window, chill, foldsMs: step === 0 ? [] : folds.map((at) => durationMs(at * step)) }
}

function anyIngredient(kind: IngredientKind): fc.Arbitrary<Omit<Ingredient, 'id' | 'name' | 'order'>> {
  return fc
    .record({
      contains: fc.subarray<Allergen>([...ALLERGENS]),
      price: fc.option(fc.record({ cents: fc.integer({ min: 0, max: 1_000_000 }), per: weight() })),
      bag: fc.option(weight()),
    })
    .map((drawn) => ({ ...drawn, kind, retired: false }))
}

function anyRoom(): fc.Arbitrary<DoughRoom> {
  const temperature = () => fc.oneof(degrees('C', 5, 45), degrees('F', 41, 113))
  return fc.record({
    fromMinute: fc.integer({ min: 0, max: 700 }),
    coolerByMinute: fc.integer({ min: 701, max: 1_439 }),
    scaleStep: fc.constant<Weight>({ thousandths: 1_000, unit: 'g' }),
    flourIn: fc.constantFrom<DoughRoom['flourIn']>('none', 'halfBags', 'bags'),
    surplusTo: fc.constantFrom(null, formulaId('plain')),
    dividerPiecesPerHour: fc.option(fc.integer({ min: 1, max: 20_000 })),
    handPiecesPerHour: fc.integer({ min: 1, max: 3_000 }),
    rollers: fc.integer({ min: 1, max: 20 }),
    proofTrays: fc.option(fc.integer({ min: 1, max: 2_000 })),
    roomAt: temperature(),
    flourAt: temperature(),
    tapAt: degrees('C', 0, 40),
    hotTapAt: degrees('C', 41, 70),
    hasIce: fc.boolean(),
    provesAt: temperature(),
    coolsIn: ms(60_000, 43_200_000),
  })
}

function degrees(unit: Degrees['unit'], from: number, to: number): fc.Arbitrary<Degrees> {
  return fc
    .integer({ min: from * 1_000, max: to * 1_000 })
    .map((thousandths): Degrees => ({ thousandths: thousandths + 0, unit }))
}

export function weight(): fc.Arbitrary<Weight> {
  return fc.record({
    thousandths: fc.integer({ min: 1, max: 100_000_000 }),
    unit: fc.constantFrom('g' as const, 'kg' as const, 'oz' as const, 'lb' as const),
  })
}

/** Of one piece, as shaped or on its label. */
export function pieceWeight(): fc.Arbitrary<Weight> {
  return fc.oneof(
    fc.record({ thousandths: fc.integer({ min: 5_000, max: 3_000_000 }), unit: fc.constant('g' as const) }),
    fc.record({ thousandths: fc.integer({ min: 1_000, max: 16_000 }), unit: fc.constant('oz' as const) }),
  )
}

function window(): fc.Arbitrary<DwellWindow> {
  return fc
    .tuple(
      fc.array(fc.integer({ min: 0, max: 1_000_000_000 }), { minLength: 3, maxLength: 3 }),
      fc.constantFrom('s' as const, 'min' as const, 'h' as const),
    )
    .map(([sides, unit]) => {
      const [earliest = 0, target = 0, latest = 0] = sides.sort((a, b) => a - b)
      return { earliestMs: durationMs(earliest), targetMs: durationMs(target), latestMs: durationMs(latest), unit }
    })
}

function percent(to: number) {
  return fc.integer({ min: 0, max: to * 1_000 })
}

function ms(from: number, to: number) {
  return fc.integer({ min: from, max: to }).map(durationMs)
}
