import type { BakeLoad, BakeOff } from '../../shared-core/plan/bake-off/bake-off.ts'
import { planBakeOff } from '../../shared-core/plan/bake-off/plan-bake-off.ts'
import { fitted } from '../../shared-core/plan/solved.ts'
import { isSame, steadyLoads } from '../../shared-core/plan/steady.ts'
import type { Morning } from './morning.ts'
import { restAt } from './morning.ts'

const EVERY_MIN = 5
export interface Followed {
  readonly loads: readonly BakeLoad[]
  /** Plans made, and those of them whose next load was another than in the one before. */
  readonly plans: number
  readonly changes: number
}

/** The plan of the evening before, whatever the day does. */
export function eveningPlan({ given }: Morning): Followed {
  return { loads: planBakeOff(given).loads, plans: 1, changes: 0 }
}

/**
 * Live advice, followed: every five minutes what is left is planned anew by the shop's own rule of what a change must
 * gain; what has been begun stays.
 * @param changeGainCents 0: every gain counts
 */
export function livePlan(morning: Morning, changeGainCents: number): Followed {
  const { given } = morning
  const done: BakeLoad[] = []
  let plan: readonly BakeLoad[] = planBakeOff(given).loads
  let [plans, changes] = [1, 0]
  for (let now = given.oven.readyMin - 20; now < given.oven.mustBeEmptyMin; now += EVERY_MIN) {
    for (const load of plan) if (load.kettleStart < now && !done.includes(load)) done.push(load)
    const rest = restAt(morning, now, done)
    const kept = fitted(
      rest,
      plan.filter((load) => !done.includes(load)),
    )
    const { loads } = steadyLoads(rest, kept, changeGainCents)
    plan = [...loads].sort((one, other) => one.kettleStart - other.kettleStart)
    plans += 1
    if (!isSame(plan[0], kept[0])) changes += 1
  }
  return { loads: [...done, ...plan.filter((load) => !done.includes(load))], plans, changes }
}

/**
 * What a watchful baker does without a plan: whenever kettle and shelf are free, the rods that will be empty first get a
 * board each, until each kind lasts for the next while; towards the end of baking, until the close.
 */
export function lowestFirst(morning: Morning, lastsMin = 75): Followed {
  const { given } = morning
  const done: BakeLoad[] = []
  for (let now = given.oven.readyMin - 20; now < given.oven.mustBeEmptyMin; now += EVERY_MIN) {
    const rest = restAt(morning, now, done)
    const load = loadOfLowest(rest, now, done, lastsMin)
    if (load !== null) done.push(load)
  }
  return { loads: done, plans: 0, changes: 0 }
}

function loadOfLowest(rest: BakeOff, now: number, done: readonly BakeLoad[], lastsMin: number): BakeLoad | null {
  const line = lineFree(rest, now, done)
  if (line.shelf === null) return null
  const doughs = new Map(Object.entries(rest.doughs).map(([name, { pieces }]) => [name, pieces]))
  const most = Math.min(line.pieces, rest.kettle.pieces * Math.floor(1 + rest.boards.maxWaitMin / rest.kettle.cycleMin))
  const isEnd = now + 60 >= rest.oven.mustBeEmptyMin
  const wants = rest.varieties
    .map((variety) => {
      const until = isEnd ? rest.close : Math.min(rest.close, Math.max(now, rest.open) + lastsMin)
      const asked = variety.demand.mean * (partOf(variety.demand.profile, until) - partOf(variety.demand.profile, now))
      const coming = (rest.running ?? []).reduce(
        (sum, load) => sum + load.lines.reduce((n, [name, pieces]) => n + (name === variety.name ? pieces : 0), 0),
        0,
      )
      return { variety, short: asked - variety.onShelf - coming }
    })
    .sort((one, other) => other.short - one.short)
  const first = wants[0]
  if (first === undefined || first.short < rest.unit / 2) return null
  const lines: [string, number][] = []
  let [room, least, longest] = [most, first.variety.bakeMin, first.variety.bakeMin]
  for (const { variety, short } of wants) {
    const [low, high] = [Math.min(least, variety.bakeMin), Math.max(longest, variety.bakeMin)]
    if (short < rest.unit / 2 || high - low > rest.bakeToleranceMin) continue
    const pieces =
      Math.floor(Math.min(room, Math.ceil(short / rest.unit) * rest.unit, doughs.get(variety.dough) ?? 0) / rest.unit) *
      rest.unit
    if (pieces <= 0) continue
    lines.push([variety.name, pieces])
    doughs.set(variety.dough, (doughs.get(variety.dough) ?? 0) - pieces)
    room -= pieces
    ;[least, longest] = [low, high]
  }
  if (lines.length === 0) return null
  return (
    fitted(rest, [{ shelf: line.shelf, kettleStart: now, in: line.in, flip: line.in, out: line.in, lines }])?.[0] ??
    null
  )
}

function lineFree({ oven, kettle }: BakeOff, now: number, done: readonly BakeLoad[]) {
  const kettleFree = Math.max(now, ...done.map((load) => load.kettleStart + kettle.cycleMin))
  if (kettleFree > now + EVERY_MIN) return { shelf: null, pieces: 0, in: now }
  for (const { name, pieces } of oven.shelves) {
    const free = Math.max(
      oven.readyMin,
      ...done.filter(({ shelf }) => shelf === name).map(({ out }) => out + oven.handlingMin),
    )
    if (free <= now + EVERY_MIN) return { shelf: name, pieces, in: Math.max(free, now + kettle.cycleMin) }
  }
  return { shelf: null, pieces: 0, in: now }
}

function partOf(profile: readonly (readonly [number, number])[], minute: number): number {
  const at = profile.findIndex(([of]) => of >= minute)
  if (at < 0) return 1
  const [to, part] = profile[at] ?? [minute, 1]
  const [from, before] = profile[at - 1] ?? [to, part]
  return to === from ? part : before + ((part - before) * (minute - from)) / (to - from)
}
