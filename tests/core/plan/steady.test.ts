import { describe, expect, it } from 'vitest'
import { loadId, plannedId, shelfId } from '../../../shared-core/ids.ts'
import type { Plan } from '../../../shared-core/live/plan.ts'
import { expectedOf } from '../../../shared-core/plan/bake-off/expected.ts'
import { problemOf } from '../../../shared-core/plan/bake-off-of.ts'
import { planDay } from '../../../shared-core/plan/plan-day.ts'
import { steadied } from '../../../shared-core/plan/steady.ts'
import { at, lines } from '../support/make.ts'
import type { eveningLine } from './plan-day-support.ts'
import { asking, followedTo } from './plan-day-support.ts'

const EVENING = asking()
const PLAN = planDay(EVENING, null, 7)
const AT_SEVEN = followedTo(EVENING, PLAN, 420)
const SEVEN = planDay(AT_SEVEN, PLAN, 9)

const what = ({ loads }: Plan) =>
  loads.map(({ id, shelfId: shelf, lines: its, inAtMs }) => ({ id, shelf, its, inAtMs }))

describe('a plan that people work by', () => {
  it('[I35] given nothing new, when it is asked again, then the loads and their ids are the same and nothing is told', () => {
    const again = planDay(AT_SEVEN, SEVEN, 12)
    expect(what(again)).toEqual(what(SEVEN))
    expect(again.changed).toBe(SEVEN.changed)
    const minuteOn = { ...AT_SEVEN, line: { ...AT_SEVEN.line, nowMs: at('7:00:20') } }
    const [next, stays] = [what(SEVEN), what(planDay(minuteOn, SEVEN, 13))].map((loads) =>
      loads.find(({ inAtMs }) => inAtMs > at('7:00:20')),
    )
    expect(stays).toEqual(next)
  })

  it('[I35] given another plan that gains less than the shop asks, then the next load stays; given one that gains it, it changes', () => {
    const [first, second, ...rest] = SEVEN.loads.filter(({ inAtMs }) => inAtMs > at('7:00'))
    if (first === undefined || second === undefined) throw new Error('the morning has two loads to come')
    // Somebody's plan of little sense: what should come next comes an hour and a half later.
    const late = {
      ...first,
      kettleAtMs: at('8:35'),
      inAtMs: at('8:40'),
      flipAtMs: at('8:43:30'),
      outAtMs: at('8:56'),
      readyAtMs: at('9:11'),
    }
    const odd: Plan = { ...SEVEN, loads: [second, late, ...rest] }
    const asks = (cents: number) => ({
      ...AT_SEVEN,
      shop: { ...AT_SEVEN.shop, baking: { ...AT_SEVEN.shop.baking, changeGainCents: cents } },
    })
    const kept = steadied(asks(1_000_000), problemOf(asks(1_000_000), odd), odd)
    expect(kept.isKept).toBe(true)
    const free = steadied(asks(0), problemOf(asks(0), odd), odd)
    expect(free.isKept).toBe(false)
    expect(free.gainCents).toBeGreaterThan(0)
    const { given } = problemOf(asks(0), odd)
    expect(expectedOf(given, free.loads).profit).toBeGreaterThan(expectedOf(given, kept.loads).profit)
    const gain = free.gainCents ?? 0
    expect(steadied(asks(gain + 50), problemOf(asks(gain + 50), odd), odd).loads[0]?.in).toBe(kept.loads[0]?.in)
  })

  it('[I34] given the next load moved by minutes, then it keeps its id; given one loaded meanwhile, then its id is gone', () => {
    const [next] = SEVEN.loads.filter(({ inAtMs }) => inAtMs > at('7:00'))
    if (next === undefined) throw new Error('a load is to come')
    const slow = { ...AT_SEVEN, line: { ...AT_SEVEN.line, nowMs: at('7:01'), kettleFromMs: at('7:20') } }
    const later = planDay(slow, SEVEN, 12)
    const moved = later.loads.find(({ id }) => id === next.id)
    expect(moved?.kettleAtMs).toBeGreaterThanOrEqual(Math.max(at('7:20'), next.kettleAtMs ?? 0))
    const loaded = {
      id: loadId('tapped'),
      shelfId: next.shelfId,
      plannedId: next.id,
      inAtMs: at('7:00'),
      flipAtMs: at('7:03:30'),
      isFlipped: false,
      outAtMs: at('7:16'),
      boards: 4,
      lines: next.lines,
    }
    const after = planDay({ ...AT_SEVEN, line: { ...AT_SEVEN.line, nowMs: at('7:01'), loads: [loaded] } }, SEVEN, 12)
    expect(after.loads.some(({ id }) => id === next.id)).toBe(false)
  })

  it('[I36] given a rush of sales, then what changed is told with the variety, and for ten minutes', () => {
    const rush = new Map(
      [...AT_SEVEN.demand].map(([id, one]) => [id, id === 'poppy' ? { ...one, mean: one.mean * 4 } : one]),
    )
    const busy = { ...AT_SEVEN, demand: rush }
    const plan = planDay(busy, SEVEN, 12)
    expect(plan.changed?.cause).toEqual({ kind: 'sales', varietyId: 'poppy', isMore: true })
    expect(plan.changed?.gainCents).toBeGreaterThan(0)
    const later = (clock: string) => planDay({ ...busy, line: { ...busy.line, nowMs: at(clock) } }, plan, 13).changed
    expect(later('7:00:30')).toEqual(plan.changed)
  })

  it('[I36] given what people said, then that is the cause: a shelf that is over, a load set, one forbidden, the changeover moved', () => {
    const cause = (parts: Parameters<typeof eveningLine>[0]) =>
      planDay({ ...AT_SEVEN, line: { ...AT_SEVEN.line, ...parts } }, SEVEN, 12).changed?.cause
    const [next] = SEVEN.loads.filter(({ inAtMs }) => inAtMs > at('7:00'))
    if (next === undefined) throw new Error('a load is to come')
    const shelves = AT_SEVEN.line.shelves.filter((one) => one.shelfId !== next.shelfId)
    expect(cause({ shelves })).toEqual({ kind: 'shelf-over', shelfId: next.shelfId })
    const own = { id: plannedId('own'), shelfId: shelfId('s1'), inAtMs: next.inAtMs, lines: lines('plain', 60) }
    expect(cause({ pinned: [own] })).toEqual({ kind: 'wish' })
    const forbids = [{ shelfId: next.shelfId, varietyId: null, fromMs: at('6:00'), toMs: at('10:59') }]
    expect(cause({ forbids })).toEqual({ kind: 'wish' })
    expect(cause({ slipMs: -90 * 60_000 })).toEqual({ kind: 'changeover' })
  })

  it('[I36] given a changeover some minutes later, when the loads stay as they are, then the latest times are new at once', () => {
    const later = planDay({ ...AT_SEVEN, line: { ...AT_SEVEN.line, slipMs: 60_000 } }, SEVEN, 12)
    expect(what(later)).toEqual(what(SEVEN))
    expect(later.last?.emptyByMs).toBe((SEVEN.last?.emptyByMs ?? 0) + 60_000)
  })
})
