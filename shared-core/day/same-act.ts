import type { ActType, Command } from './commands.ts'
import type { Context } from './decision.ts'
import type { State } from './state.ts'
import type { Told, Trace } from './trace.ts'

/**
 * Acts that name no load, kettle-full or planned load by id, so that a second tap of the same act would find other
 * pieces to do it with. The rest are refused by what they name.
 */
const BY_KIND_ONLY: ReadonlySet<ActType> = new Set<ActType>([
  'shape',
  'carryIn',
  'pull',
  'dip',
  'board',
  'moveBatch',
  'wasteBatch',
  'out',
  'care',
  'doStep',
  'receiveIngredient',
  'makePreparation',
  'weighPieces',
])

/** Keeping the rest for one order is by kind only too: two people who tap it keep it once. */
function isByKind(command: Command): boolean {
  return BY_KIND_ONLY.has(command.type) || (command.type === 'keep' && command.orderId !== undefined)
}

/**
 * The same act by another device since what this screen was showing; null when there is none. Two people who tap "pull 2
 * trays" at once pull two trays, not four; two who top up the kettle topped it up once. The device's own taps do not count: each of these was meant.
 */
export function doneMeanwhile(state: State, command: Command, told: Told, { deviceId }: Context): Trace | null {
  const { seenSeq } = command
  if (seenSeq === undefined || !isByKind(command)) return null
  const since = state.traces.filter((trace) => trace.seq > seenSeq && trace.deviceId !== deviceId)
  return since.find((trace) => isSame(trace.told, told)) ?? null
}

function isSame(one: Told, other: Told): boolean {
  const lines = ({ lines = [] }: Told) => lines.map(({ varietyId, pieces }) => `${varietyId} ${pieces}`).sort()
  return (
    one.type === other.type &&
    one.doughId === other.doughId &&
    one.shelfId === other.shelfId &&
    one.stepId === other.stepId &&
    one.care === other.care &&
    one.pieces === other.pieces &&
    one.mixId === other.mixId &&
    one.ingredientId === other.ingredientId &&
    one.preparationId === other.preparationId &&
    one.date === other.date &&
    one.mark === other.mark &&
    one.milligrams === other.milligrams &&
    lines(one).join() === lines(other).join()
  )
}
