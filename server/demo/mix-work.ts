import type { Mix, MixTemp } from '../../shared-core/dough/mix.ts'
import { drawFor } from './draw.ts'
import { mixTemp } from './mix-temps.ts'
import type { Move, Scene } from './scene.ts'
import { nextShaping } from './shape-work.ts'

/** What somebody at a mix looks at; the living demo and its past days work alike. */
export type RoomScene = Pick<Scene, 'state' | 'shop' | 'seed' | 'date' | 'dayStartMs'>

const MINUTE_MS = 60_000
/** Weighing begins so long before the mixer does, and each line takes so long. */
const WEIGH_BEFORE_MS = 9 * MINUTE_MS
const WEIGH_LINE_MS = 40_000
/** The thermometer goes round before the water is drawn. */
const READ_BEFORE_MS = 2.5 * MINUTE_MS
const READ_EACH_MS = 15_000
const MIX_INS_EACH_MS = 12_000

/**
 * The next thing that a mix asks of whoever works at it: weigh a line, read a temperature, start, stop, fold, shape. Made
 * of the mix's own state, so that whatever people tap in between is not done again.
 * @returns null when nothing is to be done any more, or nobody has said when it begins
 */
export function nextOfMix(mix: Mix, scene: RoomScene): Move | null {
  switch (mix.stage) {
    case 'planned':
      return mix.startAtMs === null ? null : beforeMixing(mix, mix.startAtMs, scene)
    case 'mixing':
      return whileMixing(mix, scene)
    case 'rest':
      return moving(mix, mix.formula.bulk === null ? 'bench' : 'bulk', scene, [15_000, 120_000])
    case 'bulk':
      return whileBulk(mix, scene)
    case 'bulkChill':
      return moving(mix, 'bench', scene, [0, 20 * MINUTE_MS])
    case 'bench':
      return nextShaping(mix, scene)
    default:
      return null
  }
}

function beforeMixing(mix: Mix, startMs: number, scene: RoomScene): Move {
  const start = mix.lines.filter(({ at }) => at === 'start')
  const index = start.findIndex(({ weighedAtMs }) => weighedAtMs === null)
  const line = start[index]
  if (line !== undefined) return weighing(mix, line.key, startMs - WEIGH_BEFORE_MS + index * WEIGH_LINE_MS)
  const temps: readonly MixTemp[] = [
    'flour',
    'tap',
    ...(mix.lines.some(({ preparationId }) => preparationId !== null) ? (['preferment'] as const) : []),
    ...(mix.water === null ? [] : (['water'] as const)),
  ]
  const unread = temps.findIndex((temp) => mix.temps[temp] === null)
  const temp = temps[unread]
  if (temp !== undefined) return reading(mix, temp, startMs - READ_BEFORE_MS + unread * READ_EACH_MS, scene)
  const key = `begin:${mix.id}`
  const atMs = startMs + drawFor(scene.seed, key).between(0, 100_000)
  return { key, who: 'crew', atMs, act: { type: 'moveMix', mixId: mix.id, from: 'planned', to: 'mixing' } }
}

function whileMixing(mix: Mix, scene: RoomScene): Move | null {
  const { formula, lines, temps, until, sinceMs } = mix
  const inside = lines.filter(({ at }) => at === 'mixIn')
  const index = inside.findIndex(({ weighedAtMs }) => weighedAtMs === null)
  const line = inside[index]
  if (line !== undefined && formula.mixInMs !== null)
    return weighing(mix, line.key, sinceMs + formula.mixInMs + (index + 1) * MIX_INS_EACH_MS)
  const offMs = until?.targetAtMs ?? sinceMs
  if (temps.dough === null) return reading(mix, 'dough', offMs + READ_EACH_MS, scene)
  return moving(mix, 'rest', scene, [25_000, 70_000])
}

function whileBulk(mix: Mix, scene: RoomScene): Move | null {
  const { id, formula, folds, sinceMs } = mix
  const foldMs = formula.bulk?.foldsMs[folds]
  if (foldMs !== undefined) {
    const key = `fold:${id}:${folds + 1}`
    const atMs = sinceMs + foldMs + drawFor(scene.seed, key).between(0, 110_000)
    return { key, who: 'crew', atMs, act: { type: 'foldMix', mixId: id, fold: folds + 1 } }
  }
  return moving(mix, formula.bulk?.chill == null ? 'bench' : 'bulkChill', scene, [-90_000, 5 * MINUTE_MS])
}

function moving(
  mix: Mix,
  to: 'rest' | 'bulk' | 'bulkChill' | 'bench',
  { seed }: RoomScene,
  after: readonly [number, number],
): Move | null {
  if (mix.stage === 'planned' || mix.stage === 'ended') return null
  const key = `${to}:${mix.id}`
  const atMs = (mix.until?.targetAtMs ?? mix.sinceMs) + drawFor(seed, key).between(...after)
  return { key, who: 'crew', atMs, act: { type: 'moveMix', mixId: mix.id, from: mix.stage, to } }
}

function weighing(mix: Mix, line: string, atMs: number): Move {
  return {
    key: `weigh:${mix.id}:${line}`,
    who: 'crew',
    atMs,
    act: { type: 'weighLine', mixId: mix.id, line, done: true },
  }
}

function reading(mix: Mix, temp: MixTemp, atMs: number, scene: RoomScene): Move {
  const read = mixTemp(mix, temp, scene)
  return { key: `read:${mix.id}:${temp}`, who: 'crew', atMs, act: { type: 'readMix', mixId: mix.id, temp, read } }
}
