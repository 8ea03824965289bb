import type { Act } from '../../shared-core/day/commands.ts'
import type { Load, State } from '../../shared-core/day/state.ts'
import type { DeviceId } from '../../shared-core/ids.ts'
import type { Role } from '../../shared-core/live/protocol.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import { durationMs, epochMs } from '../../shared-core/units.ts'
import { anyAct } from '../core/support/any-act.ts'
import type { Chance } from './chance.ts'

export interface Person {
  readonly role: Role
  readonly deviceId: DeviceId
  readonly chance: Chance
}

/**
 * What somebody at a screen does next, from what it shows: mostly what the line wants, now and then anything at all.
 * People make mistakes and see things late, so that acts that the shop must refuse are among them.
 */
export function nextAct(shown: State, { role, deviceId, chance }: Person): Act {
  const { shop } = shown
  if (shop === null || chance.permille(250)) return anything(shown, chance)
  if (chance.permille(50)) return takeBack(shown, deviceId, chance)
  if (role === 'counter') return atCounter(shown, shop, chance)
  if (role === 'desk' && chance.permille(200)) return atDesk(shown, shop, chance)
  return atLine(shown, shop, chance)
}

/** What no screen of ours can send is left out: it would say nothing about the shop. */
function anything(shown: State, chance: Chance): Act {
  const act = anyAct(shown, chance.word())
  return act.type === 'confirmPresumed' && act.unsureIds.length === 0 ? { type: 'openDay' } : act
}

function atLine(shown: State, shop: Shop, chance: Chance): Act {
  const shelfId = chance.oneOf([...shop.shelves.keys()])
  const load = [...shown.loads.values()].find((one) => one.shelfId === shelfId)
  if (load !== undefined) return withLoad(load, chance)
  const planned = [...shown.planned.values()].find((one) => !one.done)
  if (planned !== undefined) return { type: 'load', shelfId, plannedId: planned.id, lines: planned.lines }
  if (chance.permille(500)) return { type: 'load', shelfId, plannedId: null, lines: someLines(shop, chance, 24) }
  const loads = [1, 2, 3].map(() => ({ shelfId: null, inAtMs: null, lines: someLines(shop, chance, 24) }))
  return { type: 'setLoadList', loads }
}

function withLoad(load: Load, chance: Chance): Act {
  if (load.phase === 'first-side' && load.flip !== null && chance.permille(800))
    return { type: 'flip', loadId: load.id }
  return { type: 'out', loadId: load.id, from: load.phase, lines: null }
}

function atCounter(shown: State, shop: Shop, chance: Chance): Act {
  const [keep] = [...shown.keeps.keys()]
  if (keep !== undefined && chance.permille(200)) return { type: chance.oneOf(['handOver', 'release']), keepId: keep }
  const lines = someLines(shop, chance, 13)
  const [line] = lines
  if (line !== undefined && chance.permille(150)) return { type: 'count', ...line }
  return { type: chance.permille(850) ? 'sell' : 'keep', lines }
}

function atDesk(shown: State, shop: Shop, chance: Chance): Act {
  if (shown.day !== null && chance.permille(60)) return { type: 'closeDay' }
  if (shown.day === null && shown.lastDay?.before != null && chance.permille(500))
    return { type: 'reopenDay', label: shown.lastDay.label }
  const [planned] = [...shown.setUps.keys()]
  if (planned !== undefined && chance.permille(300)) return { type: 'dropSetUp', setUpId: planned }
  const shelf = chance.oneOf([...shop.shelves.values()])
  const dough = chance.oneOf([...shop.doughs.values()])
  if (chance.permille(300))
    return { type: 'carryIn', doughId: dough.id, varietyId: null, pieces: 48, stage: 'chill', sinceMs: null }
  const changes = chance.oneOf([
    [{ entity: 'shelf', value: { ...shelf, pieces: chance.between(24, 60) } }],
    [{ entity: 'kettle', value: { ...shop.kettle, cycleMs: durationMs(chance.between(45, 120) * 1_000) } }],
    [{ entity: 'dough', value: { ...dough, retired: !dough.retired } }],
  ] as const)
  const fromMs = epochMs(shown.recordedAtMs + chance.between(1, 10) * 60_000)
  return { type: 'changeSetUp', changes, ...(chance.permille(400) ? { fromMs } : {}) }
}

function takeBack(shown: State, deviceId: DeviceId, chance: Chance): Act {
  const own = shown.traces.filter((trace) => trace.deviceId === deviceId)
  const trace = chance.permille(700) ? own[own.length - 1] : shown.traces[0]
  return trace === undefined ? { type: 'openDay' } : { type: 'takeBack', commandId: trace.commandId }
}

function someLines(shop: Shop, chance: Chance, most: number) {
  const varieties = [...shop.varieties.keys()]
  const first = chance.between(0, varieties.length - 1)
  return varieties
    .slice(first, first + chance.between(1, 2))
    .map((varietyId) => ({ varietyId, pieces: chance.between(1, most) }))
}
