import type { RestDemand } from '../demand/demand.ts'
import { partBy } from '../demand/exposure.ts'
import type { Pieces } from '../demand/pieces.ts'
import { negativeBinomial } from '../demand/pieces.ts'
import type { StockPoint } from '../demand/stock-now.ts'
import { stockPoints } from '../demand/stock-now.ts'
import type { Today, TodayItem } from '../demand/today.ts'
import type { VarietyId } from '../ids.ts'
import { varietyId } from '../ids.ts'
import type { Shop, Variety } from '../shop/shop.ts'
import { windowOf } from '../shop/windows.ts'
import type { Asked } from './how-many.ts'
import { howMany } from './how-many.ts'
import type { Why } from './why.ts'
import { summedUp, weighedOf } from './why.ts'
import type { WorthGiven } from './worth.ts'
import { worthOf } from './worth.ts'

/** What remains of a variety for the afternoon. Pieces are whole, chances 0 to 1. */
export interface AfternoonOf {
  /** For sale when no more is baked: not fewer with 10, 50 and 90 % chance. */
  readonly left: { readonly q10: number; readonly q50: number; readonly q90: number }
  /** Chance that what is there and on the way lasts to the close, from the changeover on. */
  readonly lasts: number
  /** Pieces that are worth putting into the last loads, besides what is planned. */
  readonly more: number
  readonly why: readonly Why[]
}

/**
 * What will be there at the changeover, whether it lasts, and what the last loads should carry.
 *
 * A day's demand is a rate that is not known (gamma) and customers by chance (Poisson), so what is still asked for by the
 * changeover and after it goes up and down together. Where pieces run out before more comes, what was asked for meanwhile
 * takes none of the later ones: the most that any arrival leaves counts.
 * @param kitchen of a variety's demand, what the kitchen uses: 0 to 1
 * @returns nothing for a day without a changeover, or when it is over
 */
export function afternoon(
  shop: Shop,
  today: Today,
  rests: ReadonlyMap<string, RestDemand>,
  kitchen: WorthGiven['kitchen'],
): ReadonlyMap<VarietyId, AfternoonOf> {
  const changeover = today.changeoverMinute
  if (changeover === null || today.nowMinute >= changeover) return new Map()
  const cases = today.items.flatMap((item) => {
    const variety = shop.varieties.get(varietyId(item.id))
    const rest = rests.get(item.id)
    return variety === undefined || rest === undefined ? [] : [caseOf(shop, today, variety, item, rest)]
  })
  const more = moreOf(shop, today, cases, kitchen)
  return new Map(
    cases.map((one) => {
      const { amount, asked } = more.get(one.variety.id) ?? { amount: null, asked: null }
      const pieces = amount?.pieces ?? 0
      return [
        one.variety.id,
        {
          left: leftAt(one, changeover),
          lasts: lastsFrom(one),
          more: pieces,
          why: amount === null || asked === null || pieces === 0 ? [] : whyOf(one, asked, amount),
        },
      ]
    }),
  )
}

/** One variety, with what is still asked for of it from any minute to any other. */
interface Case {
  readonly variety: Variety
  readonly item: TodayItem
  readonly rest: RestDemand
  readonly nowMinute: number
  /** Minute at which a piece of the last load is ready to sell; null: no load goes in any more. */
  readonly readyMinute: number | null
  readonly between: (fromMinute: number, toMinute: number | null) => Pieces
  /** What is for sale now, by chance. */
  readonly stock: readonly StockPoint[]
}

const MINUTE_MS = 60_000

function caseOf(shop: Shop, today: Today, variety: Variety, item: TodayItem, rest: RestDemand): Case {
  const { nowMinute, lastLoadInMinute, bakingIsOver } = today
  const whole = negativeBinomial(rest.mean, rest.dispersion)
  const between = (from: number, to: number | null) => {
    const until = to === null ? 1 : partBy(rest.profile, to)
    const part = until - (from <= nowMinute ? 0 : partBy(rest.profile, from))
    return part >= 1 ? whole : negativeBinomial(rest.mean * Math.max(0, part), rest.dispersion)
  }
  const takesMs =
    (windowOf(shop, 'bake', variety.doughId, variety.id)?.targetMs ?? 0) +
    (windowOf(shop, 'cool', variety.doughId, variety.id)?.targetMs ?? 0)
  const canStill = !bakingIsOver && lastLoadInMinute !== null && lastLoadInMinute >= nowMinute
  return {
    variety,
    item,
    rest,
    nowMinute,
    readyMinute: canStill ? lastLoadInMinute + takesMs / MINUTE_MS : null,
    between,
    stock: stockPoints(item.stock),
  }
}

/** What is there, from each moment on at which some comes, with how much there is then and later on up to a minute. */
function arrivals({ item, stock, nowMinute }: Case, until: number): { from: number; stock: readonly StockPoint[] }[] {
  const coming = item.more.filter(({ minute }) => minute <= until)
  const from = (n: number) => coming.slice(n).reduce((sum, { pieces }) => sum + pieces, 0)
  return [
    { from: nowMinute, stock: stock.map(({ pieces, chance }) => ({ pieces: pieces + from(0), chance })) },
    ...coming.map(({ minute }, n) => ({
      from: Math.max(nowMinute, minute),
      stock: [{ pieces: from(n), chance: 1 }],
    })),
  ]
}

function leftAt(one: Case, changeover: number): AfternoonOf['left'] {
  const all = arrivals(one, changeover).map(({ from, stock }) => ({ stock, asked: one.between(from, changeover) }))
  const least = (chance: number) => Math.max(...all.map(({ stock, asked }) => leftWith(stock, asked, chance)))
  return { q10: least(0.1), q50: least(0.5), q90: least(0.9) }
}

/** The fewest pieces left with P(left ≤ n) ≥ chance. */
function leftWith(stock: readonly StockPoint[], asked: Pieces, chance: number): number {
  const upTo = (n: number) => stock.reduce((sum, s) => sum + s.chance * (1 - asked.cdf(s.pieces - n - 1)), 0)
  let [below, high] = [-1, Math.max(...stock.map(({ pieces }) => pieces))]
  while (high - below > 1) {
    const middle = Math.floor((below + high) / 2)
    if (upTo(middle) >= chance - 1e-12) high = middle
    else below = middle
  }
  return high
}

function lastsFrom(one: Case): number {
  return Math.max(
    ...arrivals(one, Number.POSITIVE_INFINITY).map(({ from, stock }) => {
      const asked = one.between(from, null)
      return stock.reduce((sum, { pieces, chance }) => sum + chance * asked.cdf(pieces), 0)
    }),
  )
}

interface More {
  readonly amount: ReturnType<typeof howMany> extends ReadonlyMap<unknown, infer Amount> ? Amount : never
  readonly asked: Asked
}

function moreOf(
  shop: Shop,
  today: Today,
  cases: readonly Case[],
  kitchen: WorthGiven['kitchen'],
): ReadonlyMap<VarietyId, More> {
  const means = new Map(cases.map(({ variety, rest }) => [variety.id, rest.mean]))
  const asked = new Map<VarietyId, Asked>()
  for (const one of cases) {
    const { variety, item, readyMinute, nowMinute, between, stock } = one
    if (readyMinute === null || readyMinute >= today.closeMinute || variety.retired) continue
    const onTheWay = item.more.reduce((sum, { pieces }) => sum + pieces, 0)
    asked.set(variety.id, {
      demand: between(nowMinute, null),
      stock: stock.map(({ pieces, chance }) => ({ pieces: pieces + onTheWay, chance })),
      later: between(readyMinute, null),
      worth: worthOf(shop, variety, { means, kitchen }),
      unit: variety.bakedOn === 'board' ? shop.boards.pieces : 1,
      besides: 0,
    })
  }
  const within = [...(today.chilled ?? [])].map(([doughId, pieces]) => ({
    ids: [...asked.keys()].filter((id) => shop.varieties.get(id)?.doughId === doughId),
    pieces,
  }))
  const amounts = howMany(asked, shop.demand.dayOldSells, within)
  return new Map(
    [...asked].flatMap(([id, one]) => {
      const amount = amounts.get(id)
      return amount === undefined ? [] : [[id, { amount, asked: one }] as const]
    }),
  )
}

function whyOf({ rest, item }: Case, { unit, worth }: Asked, amount: More['amount']): readonly Why[] {
  const onTheWay = item.more.reduce((sum, { pieces }) => sum + pieces, 0)
  const rounded = Math.ceil(amount.exact / unit) * unit
  const isShort = amount.pieces < Math.floor(amount.exact / unit) * unit
  const end: Why[] = isShort
    ? [{ code: 'dough', pieces: amount.pieces - amount.exact }]
    : [{ code: 'unit', pieces: amount.pieces - amount.exact, unit: Math.max(1, rounded === amount.exact ? 1 : unit) }]
  const parts: Why[] = [
    { code: 'rest', pieces: rest.mean },
    { code: 'there', pieces: -item.stock.mean },
    { code: 'onTheWay', pieces: -onTheWay },
  ]
  const sure = (pieces: number): Why => ({ code: 'sure', pieces, isAssumed: worth.isAssumed, ...weighedOf(amount) })
  return [...summedUp(amount.exact, parts, sure), ...end.filter(({ pieces }) => pieces !== 0)]
}
