import type { Act } from '../../shared-core/day/commands.ts'
import type { State } from '../../shared-core/day/state.ts'
import type { Role } from '../../shared-core/live/protocol.ts'
import { anyAct } from '../core/support/any-act.ts'
import type { Chance } from '../days/chance.ts'

/**
 * What somebody taps next, from what a screen shows: sales at the counter, loads, flips and outs at the line, and now and
 * then anything at all, so that there are refusals and questions too. Here the process is on trial, not the shop's rules:
 * the simulated days have people with more sense.
 */
export function nextAct(shown: State, role: Role, chance: Chance): Act {
  const { shop } = shown
  if (shop === null || chance.permille(300)) return anything(shown, chance)
  const lines = [{ varietyId: chance.oneOf([...shop.varieties.keys()]), pieces: chance.between(1, 13) }]
  if (role === 'counter') return { type: chance.permille(800) ? 'sell' : 'keep', lines }
  const shelfId = chance.oneOf([...shop.shelves.keys()])
  const load = [...shown.loads.values()].find((one) => one.shelfId === shelfId)
  if (load === undefined) return { type: 'load', shelfId, plannedId: null, lines }
  if (load.phase === 'first-side' && load.flip !== null) return { type: 'flip', loadId: load.id }
  return { type: 'out', loadId: load.id, from: load.phase, lines: null }
}

/** What no screen of ours can send is left out: it is not read, and its refusal is not kept. */
function anything(shown: State, chance: Chance): Act {
  const act = anyAct(shown, chance.word())
  return act.type === 'confirmPresumed' && act.unsureIds.length === 0 ? { type: 'openDay' } : act
}
