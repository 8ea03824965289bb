import type { Act } from '../../shared-core/day/commands.ts'
import type { State } from '../../shared-core/day/state.ts'
import type { DeviceId } from '../../shared-core/ids.ts'
import type { Role } from '../../shared-core/live/protocol.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import { anyAct } from '../core/support/any-act.ts'
import { AT_COUNTER } from './acts-counter.ts'
import { AT_DESK } from './acts-desk.ts'
import { AT_DOUGH } from './acts-dough.ts'
import { AT_LINE } from './acts-line.ts'
import { MISTAKES } from './acts-mistaken.ts'
import type { Chance } from './chance.ts'
import type { PartOfDay } from './day-plan.ts'

/** What somebody at a screen sees and knows when they are about to do something. */
export interface Scene {
  readonly shown: State
  readonly shop: Shop
  readonly role: Role
  readonly deviceId: DeviceId
  readonly part: PartOfDay
  readonly chance: Chance
  readonly nowMs: number
}

/** Acts one after the other; `take-back` takes the act before it back, as soon as somebody notices. */
export type Doing = readonly (Act | 'take-back')[]

/** A small act of somebody's day: where and when it is likely, and what it comes to. Nothing when there is no occasion. */
export interface SmallAct {
  readonly roles: readonly Role[]
  readonly parts: readonly PartOfDay[] | 'all-day'
  /** How likely, against the others of its place and time. */
  readonly weight: number
  readonly do: (scene: Scene) => Doing
}

const SMALL_ACTS: readonly SmallAct[] = [...AT_LINE, ...AT_COUNTER, ...AT_DESK, ...AT_DOUGH, ...MISTAKES]
/** Now and then somebody does anything at all, and so does whoever finds no occasion for what they had in mind. */
const ANYTHING_PERMILLE = 60
const OCCASIONS_MAX = 4

/**
 * What somebody at a screen does next, by their place and the hour, from what the screen shows. People make mistakes
 * and see things late, so that acts that the shop must refuse are among them.
 */
export function nextDoing(scene: Scene): Doing {
  const { chance } = scene
  if (chance.permille(ANYTHING_PERMILLE)) return anything(scene)
  const likely = likelyActs(scene.role, scene.part)
  for (let n = 0; n < OCCASIONS_MAX; n += 1) {
    const doing = drawn(likely, chance).do(scene)
    if (doing.length > 0) return doing
  }
  return anything(scene)
}

/** What no screen of ours can send is left out: it would say nothing about the shop. */
function anything({ shown, chance }: Scene): Doing {
  const act = anyAct(shown, chance.word())
  return act.type === 'confirmPresumed' && act.unsureIds.length === 0 ? [{ type: 'openDay' }] : [act]
}

interface Likely {
  readonly acts: readonly SmallAct[]
  readonly weight: number
}
const LIKELY = new Map<string, Likely>()

function likelyActs(role: Role, part: PartOfDay): Likely {
  const key = `${role} ${part}`
  const known = LIKELY.get(key)
  if (known !== undefined) return known
  const acts = SMALL_ACTS.filter(
    (one) => one.roles.includes(role) && (one.parts === 'all-day' || one.parts.includes(part)),
  )
  const made = { acts, weight: acts.reduce((sum, one) => sum + one.weight, 0) }
  LIKELY.set(key, made)
  return made
}

function drawn({ acts, weight }: Likely, chance: Chance): SmallAct {
  let left = chance.between(1, weight)
  for (const act of acts) {
    left -= act.weight
    if (left <= 0) return act
  }
  throw new Error('nobody has anything to do')
}
