import type { Event } from '../../shared-core/day/events.ts'
import type { Batch, State } from '../../shared-core/day/state.ts'
import type { MixId } from '../../shared-core/ids.ts'
import { chillMove } from './dough-room.ts'
import type { RoomScene } from './mix-work.ts'
import { nextOfMix } from './mix-work.ts'
import type { Errand, PastDay } from './past-days.ts'
import { roomErrands } from './room-errands.ts'
import type { Move } from './scene.ts'

/** What stands on the dough room's clock. */
export function pastErrands(day: PastDay): readonly Errand[] {
  return roomErrands(day).map(({ key, minute, who, act }) => ({
    key,
    who,
    atMs: day.dayStartMs + minute * 60_000,
    act,
  }))
}

/** What follows from a fact: the next step of its mix, and the trays that it brought into the proof going to chill. */
export function pastFollowing(
  { shop, seed, date, dayStartMs }: PastDay,
  state: State,
  event: Event,
): readonly Errand[] {
  const scene = { state, shop, seed, date, dayStartMs }
  const steps = mixesOf(event).flatMap((id) => {
    const mix = state.mixes.get(id)
    return mix === undefined ? [] : (nextOfMix(mix, scene) ?? [])
  })
  const chill = event.type === 'piecesShaped' ? chilling(event.batch, scene) : null
  return [...steps.map(asErrand), ...(chill === null ? [] : [chill])]
}

/** What is still there by then: a load may have taken some of it. */
function chilling(batch: Batch, scene: RoomScene): Errand | null {
  const move = chillMove(batch, scene)
  if (move === null) return null
  const act = (state: State) => {
    const still = state.batches.get(batch.id)
    return still === undefined ? null : (chillMove(still, { ...scene, state })?.act ?? null)
  }
  return { ...asErrand(move), act }
}

function mixesOf(event: Event): readonly MixId[] {
  switch (event.type) {
    case 'mixesPlanned':
      return event.mixes.map(({ id }) => id)
    case 'lineWeighed':
    case 'mixRead':
    case 'mixMoved':
    case 'mixFolded':
      return [event.mixId]
    case 'piecesShaped':
      return event.from === undefined ? [] : [event.from.mixId]
    case 'piecesWeighed': {
      const mixId = event.checks.samples.at(-1)?.mixId ?? null
      return mixId === null ? [] : [mixId]
    }
    default:
      return []
  }
}

function asErrand({ key, who, atMs, act }: Move): Errand {
  return { key, who, atMs, act: () => act }
}
