import { varietyId } from '../ids.ts'
import type { PlanCannot, PlanLimit } from '../live/plan.ts'
import type { BakeLoad, BakeOff } from './bake-off/bake-off.ts'
import { doorIsFree } from './bake-off/door.ts'
import { boardsOf, dipsOf, doughOf, dueOf, piecesIn } from './bake-off/load-parts.ts'
import { doughOfKey } from './dough-key.ts'
import { instantOf } from './plan-asked.ts'
import { readyOf } from './supply-of.ts'
import type { Named, Telling } from './told-plan.ts'

const SAME_MIN = 1e-3

/** What was wished and cannot be: orders that come too late or have no dough, loads over a limit, shows that stay short. */
export function cannotOf(telling: Telling, named: readonly Named[]): readonly PlanCannot[] {
  const { given } = telling.problem
  const loads = named.filter(
    ({ load }) => !(given.running ?? []).includes(load) && !(given.pinned ?? []).includes(load),
  )
  const planned = loads.map(({ load }) => load)
  return [
    ...ordersShort(telling, planned),
    ...named
      .filter(({ isPinned }) => isPinned)
      .flatMap(({ id, load }) =>
        limitsBroken(given, load, named).map((limit) => ({ kind: 'pinned-over', loadId: id, limit }) as const),
      ),
    ...showsShort(given, planned),
    ...doughsShort(telling),
    ...(isWithoutTime(given, named) ? [{ kind: 'no-time' } as const] : []),
  ]
}

function ordersShort({ asked, problem: { given } }: Telling, planned: readonly BakeLoad[]): PlanCannot[] {
  const had = new Map<string, number>()
  return [...given.orders]
    .sort((one, other) => one.due - other.due)
    .flatMap((order) =>
      order.lines.flatMap(([name, pieces]): PlanCannot[] => {
        const there = readyBy(given, name, planned, dueOf(given, order)) - (had.get(name) ?? 0)
        had.set(name, (had.get(name) ?? 0) + Math.min(pieces, Math.max(0, there)))
        const short = pieces - Math.max(0, there)
        if (short <= 0) return []
        return [
          { kind: 'order-short', varietyId: varietyId(name), dueAtMs: instantOf(asked, order.due), pieces: short },
        ]
      }),
    )
}

function readyBy(given: BakeOff, name: string, planned: readonly BakeLoad[], minute: number): number {
  const variety = given.varieties.find((one) => one.name === name)
  if (variety === undefined) return 0
  let sum = 0
  for (const [at, pieces] of readyOf(given, variety, planned)) if (at <= minute + SAME_MIN) sum = pieces
  return variety.onShelf + sum
}

function showsShort(given: BakeOff, planned: readonly BakeLoad[]): PlanCannot[] {
  return given.varieties.flatMap(({ name, show }): PlanCannot[] => {
    if (show === undefined || show.atOpen === 0 || (given.now ?? 0) > given.open) return []
    const short = show.atOpen - readyBy(given, name, planned, given.open)
    return short > 0 ? [{ kind: 'show-short', varietyId: varietyId(name), pieces: short }] : []
  })
}

/** Orders and pinned loads that want more of a dough than there is. */
function doughsShort({ asked, problem: { given, started } }: Telling): PlanCannot[] {
  const wanted = new Map<string, number>()
  const want = (name: string, pieces: number) => {
    const key = doughOf(given, name)
    wanted.set(key, (wanted.get(key) ?? 0) + pieces)
  }
  for (const [name, pieces] of started.stillTaken) want(name, pieces)
  const had = new Map(given.varieties.map(({ name, onShelf }) => [name, onShelf]))
  for (const { lines } of given.running ?? [])
    for (const [name, pieces] of lines) had.set(name, (had.get(name) ?? 0) + pieces)
  for (const { lines } of given.orders)
    for (const [name, pieces] of lines) {
      const there = Math.min(pieces, had.get(name) ?? 0)
      had.set(name, (had.get(name) ?? 0) - there)
      want(name, pieces - there)
    }
  const taken = new Map<string, number>()
  for (const [name, pieces] of started.stillTaken) {
    const key = doughOf(given, name)
    taken.set(key, (taken.get(key) ?? 0) + pieces)
  }
  if (asked.line.doughIsOpen) return []
  return [...wanted].flatMap(([key, pieces]): PlanCannot[] => {
    const there = (given.doughs[key]?.pieces ?? 0) + (taken.get(key) ?? 0)
    return pieces > there ? [{ kind: 'dough-short', doughId: doughOfKey(key).doughId, pieces: pieces - there }] : []
  })
}

/** Limits that a load breaks where people have set it. */
function limitsBroken(given: BakeOff, load: BakeLoad, named: readonly Named[]): PlanLimit[] {
  const others = [...named.map((one) => one.load), ...(given.running ?? [])].filter((one) => one !== load)
  const { oven, kettle, boards } = given
  const shelf = oven.shelves.find(({ name }) => name === load.shelf)
  const kettleEnd = (one: BakeLoad) => one.kettleStart + dipsOf(given, one.lines) * kettle.cycleMin
  const overlaps = (from: number, to: number, other: number, otherTo: number) =>
    from < otherTo - SAME_MIN && other < to - SAME_MIN
  const atOnce = others.filter((one) => overlaps(load.kettleStart, load.flip, one.kettleStart, one.flip))
  const onBoards = [load, ...atOnce].reduce((sum, { lines }) => sum + boardsOf(given, lines), 0)
  const onShelf = others.filter(({ shelf: name }) => name === load.shelf)
  const shelfTaken = onShelf.some((one) =>
    overlaps(load.in, load.out + oven.handlingMin, one.in, one.out + oven.handlingMin),
  )
  const kettleTaken =
    load.kettleStart < (given.now ?? -Infinity) - SAME_MIN ||
    others.some((one) => overlaps(load.kettleStart, kettleEnd(load), one.kettleStart, kettleEnd(one)))
  const emptyBy = Math.min(oven.mustBeEmptyMin, shelf?.emptyByMin ?? Infinity)
  const broken: [PlanLimit, boolean][] = [
    ['kettle', kettleTaken],
    ['boards', onBoards > boards.count],
    ['shelf', shelf === undefined || piecesIn(load.lines) > shelf.pieces || shelfTaken],
    ['oven', load.in < oven.readyMin - SAME_MIN || load.out > emptyBy + SAME_MIN],
    ['hands', !doorIsFree(given, load, others)],
  ]
  return broken.flatMap(([limit, isBroken]) => (isBroken ? [limit] : []))
}

/** There is dough and somebody who wants it, and no load gets out of the oven in time any more. */
function isWithoutTime(given: BakeOff, named: readonly Named[]): boolean {
  const { oven, orders, now } = given
  if (named.length > 0 || orders.length === 0) return false
  const least = Math.min(...given.varieties.map(({ bakeMin }) => bakeMin))
  return Math.max(now ?? oven.readyMin, oven.readyMin) + given.kettle.cycleMin + least > oven.mustBeEmptyMin
}
