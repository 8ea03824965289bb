import type { Act } from '../../shared-core/day/commands.ts'
import type { Line, State } from '../../shared-core/day/state.ts'
import type { LineActDue } from '../../shared-core/line/act-due.ts'
import { nextActs } from '../../shared-core/line/acts.ts'
import { plannedAhead } from '../../shared-core/line/planned.ts'
import type { LineAct } from '../../shared-core/shop/shop.ts'
import { must } from '../../shared-core/support.ts'
import type { Draw } from './draw.ts'
import { drawFor } from './draw.ts'
import type { Move, Scene } from './scene.ts'

/**
 * The crew at the line: they do what the wall calls for, as people do. Each act has its own delay, drawn from its key:
 * mostly some seconds, now and then minutes. Some taps are forgotten; a later tap then presumes them, and they wait for
 * dry hands. A load or an out is never forgotten, as somebody sees the empty shelf or smells it.
 */
export function crewMoves(scene: Scene): readonly Move[] {
  const acts = nextActs(withNextLoads(scene.state), scene.nowMs)
  const kettleFreeMs = kettleFreeAt(acts, scene)
  return acts.flatMap((act) => moveFor(act, { scene, kettleFreeMs }))
}

/** Nobody at the line thinks further ahead than the next two waves; the rest of the list would only take time. */
const LOADS_IN_MIND = 7

function withNextLoads(state: State): State {
  const next = plannedAhead(state).slice(0, LOADS_IN_MIND)
  return { ...state, planned: new Map(next.map((planned) => [planned.id, planned])) }
}

interface Pace {
  readonly seconds: readonly [from: number, to: number]
  /** Once in so many times, so much later. */
  readonly lateOnceIn: number
  readonly lateSeconds: readonly [from: number, to: number]
  readonly forgotOnceIn: number
}

/** How people keep up on a good morning. Invented, except that the lift must fall into the boil's few seconds. */
const PACES: { readonly [act in LineAct]: Pace } = {
  pull: { seconds: [-60, 150], lateOnceIn: 8, lateSeconds: [240, 480], forgotOnceIn: 14 },
  dip: { seconds: [0, 12], lateOnceIn: 12, lateSeconds: [20, 45], forgotOnceIn: 24 },
  lift: { seconds: [-3, 4], lateOnceIn: 14, lateSeconds: [6, 14], forgotOnceIn: 24 },
  board: { seconds: [12, 40], lateOnceIn: 8, lateSeconds: [60, 90], forgotOnceIn: 14 },
  load: { seconds: [0, 45], lateOnceIn: 10, lateSeconds: [90, 210], forgotOnceIn: 0 },
  flip: { seconds: [-6, 18], lateOnceIn: 10, lateSeconds: [40, 75], forgotOnceIn: 18 },
  out: { seconds: [-10, 60], lateOnceIn: 10, lateSeconds: [120, 300], forgotOnceIn: 0 },
}
/** Of so many loads, one is not quite what was planned. */
const DIFFERS_ONCE_IN = 9

function moveFor(act: LineActDue, view: { scene: Scene; kettleFreeMs: number }): readonly Move[] {
  const { scene } = view
  const draw = drawFor(scene.seed, act.key)
  if (isForgotten(draw, act.act)) return outWithoutFlip(act, scene)
  const tap = tapFor(act, scene)
  if (tap === null) return []
  const dueMs = act.act === 'dip' ? Math.max(act.atMs, view.kettleFreeMs) : act.atMs
  return [{ key: act.key, who: 'crew', atMs: dueMs + delayMs(draw, act.act), act: tap }]
}

function isForgotten(draw: Draw, act: LineAct): boolean {
  const { forgotOnceIn } = PACES[act]
  return draw.share() * forgotOnceIn < 1 && forgotOnceIn > 0
}

function delayMs(draw: Draw, act: LineAct): number {
  const { seconds, lateOnceIn, lateSeconds } = PACES[act]
  const [from, to] = draw.oneIn(lateOnceIn) ? lateSeconds : seconds
  return draw.between(from, to) * 1_000
}

/** The next dip waits for the lift that comes first; a lift that nobody will tap is long done when the cycle is over. */
function kettleFreeAt(acts: readonly LineActDue[], { seed }: Scene): number {
  const lifts = acts.filter(({ act }) => act === 'lift')
  return lifts.reduce((latestMs, lift) => {
    const draw = drawFor(seed, lift.key)
    const liftedMs = isForgotten(draw, 'lift') ? lift.atMs : lift.atMs + delayMs(draw, 'lift') + 2_000
    return Math.max(latestMs, liftedMs)
  }, 0)
}

/** A flip that was done but not tapped: the key still says flip when the pieces come out. */
function outWithoutFlip({ act, loadId }: LineActDue, { state, seed }: Scene): readonly Move[] {
  if (act !== 'flip' || loadId === null) return []
  const { out } = must(state.loads, loadId)
  if (out === null) return []
  const key = `out:${loadId}`
  const atMs = out.targetAtMs + delayMs(drawFor(seed, key), 'out')
  return [{ key, who: 'crew', atMs, act: { type: 'out', loadId, from: 'first-side', lines: null } }]
}

function tapFor(due: LineActDue, scene: Scene): Act | null {
  const { state } = scene
  const { act, doughId, varietyId, batchId, shelfId, loadId, lines, pieces } = due
  switch (act) {
    case 'pull':
    case 'dip':
      return doughId === null ? null : { type: act, doughId, varietyId, pieces }
    case 'lift':
      return batchId === null ? null : { type: 'lift', batchId }
    case 'board':
      // Of pieces that no planned load wants nobody knows what they become.
      return lines.length === 0 ? null : { type: 'board', lines }
    case 'load':
      if (shelfId === null || lines.length === 0) return null
      return { type: 'load', shelfId, plannedId: due.plannedId, lines: asLoaded(due, scene) }
    case 'flip':
      return loadId === null ? null : { type: 'flip', loadId }
    case 'out':
      return loadId === null ? null : { type: 'out', loadId, from: must(state.loads, loadId).phase, lines: null }
  }
}

/** "Differs": a board of one variety became one of another of the same dough. */
function asLoaded({ key, lines }: LineActDue, { seed, shop }: Scene): readonly Line[] {
  if (!drawFor(seed, `differs:${key}`).oneIn(DIFFERS_ONCE_IN)) return lines
  const board = shop.boards.pieces
  const doughOf = ({ varietyId }: Line) => must(shop.varieties, varietyId).doughId
  const from = lines.find((line) => line.pieces > board)
  const to = lines.findLast((line) => from !== undefined && line !== from && doughOf(line) === doughOf(from))
  if (from === undefined || to === undefined) return lines
  return lines.map((line) => {
    if (line === from) return { ...line, pieces: line.pieces - board }
    return line === to ? { ...line, pieces: line.pieces + board } : line
  })
}
