import type { BakeLoad, BakeOff, BakePlan } from '../../../shared-core/plan/bake-off/bake-off.ts'

/** Times of a plan may be off by so much. */
const TIME_MIN = 1e-6
const KETTLE_BEFORE_OVEN_MIN = 20

/**
 * What a plan of the bake-off does against the rules of the scored core, each as a sentence that begins with the rule's
 * number; nothing when the plan is feasible. Running loads hold their places but are not judged themselves.
 */
export function violationsOf(given: BakeOff, plan: BakePlan): string[] {
  const loads = plan.loads.map((load, index) => ({ load, name: `load ${index + 1}`, isRunning: false }))
  const malformed = loads.flatMap((one) => malformedIn(given, one))
  // Without known shelves, varieties and numbers the rest cannot be said.
  if (malformed.length > 0) return malformed
  const running = (given.running ?? []).map((load, index) => ({ load, name: `running ${index + 1}`, isRunning: true }))
  const all = [...running, ...loads]
  return [
    ...loads.flatMap((one) => ownRules(given, one)),
    ...overlaps(given, all),
    ...boardsShort(given, all),
    ...doughShort(given, plan),
  ]
}

interface Named {
  readonly load: BakeLoad
  readonly name: string
  readonly isRunning: boolean
}

function malformedIn(given: BakeOff, { load, name }: Named): string[] {
  const found: string[] = []
  const { shelf, kettleStart, in: into, flip, out, lines } = load
  if (![kettleStart, into, flip, out].every(Number.isFinite)) found.push(`form: ${name} has a time that is no number`)
  if (!given.oven.shelves.some((one) => one.name === shelf)) found.push(`form: ${name} has an unknown shelf ${shelf}`)
  if (lines.length === 0) found.push(`form: ${name} has no line`)
  if (new Set(lines.map(([variety]) => variety)).size < lines.length) found.push(`form: ${name} has a variety twice`)
  for (const [variety, pieces] of lines) {
    if (!given.varieties.some((one) => one.name === variety)) found.push(`form: ${name} has an unknown ${variety}`)
    const units = pieces / given.unit
    if (!(units > 0) || Math.abs(units - Math.round(units)) > 1e-9)
      found.push(`form: ${name} has ${pieces} of ${variety}, no positive multiple of ${given.unit}`)
  }
  return found
}

function ownRules(given: BakeOff, { load, name }: Named): string[] {
  const { kettle, boards, oven } = given
  const { kettleStart, in: into, flip, out, lines } = load
  const room = oven.shelves.find((one) => one.name === load.shelf)?.pieces ?? 0
  const pieces = piecesOf(load)
  const bakes = lines.map(([variety]) => given.varieties.find((one) => one.name === variety)?.bakeMin ?? Number.NaN)
  const longest = Math.max(...bakes)
  const wait = into - (kettleStart + kettle.cycleMin)
  const checks: [isBroken: boolean, sentence: string][] = [
    [pieces > room, `1: ${name} has ${pieces} pieces on a shelf of ${room}`],
    [longest - Math.min(...bakes) > given.bakeToleranceMin + TIME_MIN, `1: bakes of ${name} differ too much`],
    [differ(out, into + longest), `1: out of ${name} is ${out}, not ${into + longest}`],
    [differ(flip, into + oven.firstSideMin), `1: flip of ${name} is ${flip}, not ${into + oven.firstSideMin}`],
    [into < dipsEnd(given, load) - TIME_MIN, `2: ${name} goes in at ${into}, before its last dip ends`],
    [wait > boards.maxWaitMin + TIME_MIN, `2: the first pieces of ${name} wait ${wait} min on boards`],
    [into < oven.readyMin - TIME_MIN, `5: ${name} goes in at ${into}, before the oven is ready`],
    [out > oven.mustBeEmptyMin + TIME_MIN, `5: ${name} comes out at ${out}, after the oven must be empty`],
    [kettleStart < oven.readyMin - KETTLE_BEFORE_OVEN_MIN - TIME_MIN, `5: ${name} is in the kettle too early`],
    [kettleStart < (given.now ?? kettleStart) - TIME_MIN, `now: ${name} starts at ${kettleStart}, in the past`],
  ]
  return checks.flatMap(([isBroken, sentence]) => (isBroken ? [sentence] : []))
}

/** Rules 2 and 4: one kettle, and each shelf, hold one load at a time. */
function overlaps(given: BakeOff, all: readonly Named[]): string[] {
  const kettle = all.map((one) => ({ one, from: one.load.kettleStart, to: dipsEnd(given, one.load) }))
  const found = clashes(kettle, 0).map((pair) => `2: ${pair} are in the kettle at once`)
  for (const { name } of given.oven.shelves) {
    const spans = all
      .filter(({ load }) => load.shelf === name)
      .map((one) => ({ one, from: one.load.in, to: one.load.out }))
    found.push(...clashes(spans, given.oven.handlingMin).map((pair) => `4: ${pair} are too close on shelf ${name}`))
  }
  return found
}

interface Span {
  readonly one: Named
  readonly from: number
  readonly to: number
}

function clashes(spans: readonly Span[], apartMin: number): string[] {
  return spans.flatMap((a, index) =>
    spans.slice(index + 1).flatMap((b) => {
      const isApart = b.from >= a.to + apartMin - TIME_MIN || a.from >= b.to + apartMin - TIME_MIN
      return isApart || (a.one.isRunning && b.one.isRunning) ? [] : [`${a.one.name} and ${b.one.name}`]
    }),
  )
}

/** Rule 3. Boards are most in use where a first dip ends; a board freed at that instant can be used. */
function boardsShort(given: BakeOff, all: readonly Named[]): string[] {
  const spans = all.map(({ load, isRunning }) => {
    const boards = load.lines.reduce((sum, [, pieces]) => sum + Math.ceil(pieces / given.boards.pieces - 1e-9), 0)
    return { boards, isRunning, from: load.kettleStart + given.kettle.cycleMin, to: load.flip }
  })
  return spans.flatMap(({ from: at }) => {
    const here = spans.filter(({ from, to }) => from <= at + TIME_MIN && to > at + TIME_MIN)
    const used = here.reduce((sum, { boards }) => sum + boards, 0)
    const isOver = used > given.boards.count && here.some(({ isRunning }) => !isRunning)
    return isOver ? [`3: ${used} boards are in use at ${at}, there are ${given.boards.count}`] : []
  })
}

function doughShort(given: BakeOff, { loads }: BakePlan): string[] {
  const used = new Map<string, number>()
  for (const [variety, pieces] of loads.flatMap(({ lines }) => lines)) {
    const dough = given.varieties.find((one) => one.name === variety)?.dough ?? ''
    used.set(dough, (used.get(dough) ?? 0) + pieces)
  }
  return [...used].flatMap(([dough, pieces]) => {
    const onHand = given.doughs[dough]?.pieces ?? 0
    return pieces > onHand ? [`6: ${pieces} pieces of ${dough} dough, on hand ${onHand}`] : []
  })
}

function dipsEnd({ kettle }: BakeOff, load: BakeLoad): number {
  return load.kettleStart + Math.ceil(piecesOf(load) / kettle.pieces - 1e-9) * kettle.cycleMin
}

function piecesOf({ lines }: BakeLoad): number {
  return lines.reduce((sum, [, pieces]) => sum + pieces, 0)
}

function differ(a: number, b: number): boolean {
  return Math.abs(a - b) > TIME_MIN
}
