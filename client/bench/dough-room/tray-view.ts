import type { Act } from '../../../shared-core/day/commands.ts'
import type { Batch, Until } from '../../../shared-core/day/state.ts'
import { untilOf } from '../../../shared-core/ferment/until-of.ts'
import { piecesOf } from '../../../shared-core/line/lines.ts'
import { stuffOf } from '../../words/names.ts'
import { chillClock, NO_CLOCK, stageClock } from './clock-ring.ts'
import type { RoomItem, RoomPage, RoomParts, StationId } from './room-parts.ts'

/** Trays of a mix that are ready, or end, within so long of the first stand as one. Common practice, no source. */
const TOGETHER_MS = 15 * 60_000

interface Tray {
  readonly batch: Batch
  readonly until: Until | null
  /** Proofing: when it is ready. Chilled: when it must be used. */
  readonly urgentAtMs: number
}

/** Pieces that stand on proof racks or in the cooler, what is urgent first; trays that go together are one key. */
export function trayItems(station: StationId, parts: RoomParts): readonly RoomItem[] {
  if (station !== 'proof' && station !== 'cooler') return []
  const stage = station === 'proof' ? 'proof' : 'chill'
  const trays = [...parts.state.batches.values()]
    .filter((batch) => batch.stage === stage)
    .map((batch) => trayOf(batch, parts))
    .sort((one, other) => one.urgentAtMs - other.urgentAtMs || (one.batch.id < other.batch.id ? -1 : 1))
  const groups: Tray[][] = []
  for (const tray of trays) {
    const group = groups.find(([first]) => first !== undefined && isTogether(first, tray))
    if (group === undefined) groups.push([tray])
    else group.push(tray)
  }
  return groups.flatMap((group) => groupItem(group, station, parts))
}

function trayOf(batch: Batch, { state }: RoomParts): Tray {
  const until = untilOf(state, batch)
  const urgentAtMs =
    until === null ? batch.sinceMs + NEVER_MS : batch.stage === 'proof' ? until.targetAtMs : until.latestAtMs
  return { batch, until, urgentAtMs }
}

/** Later than any window. */
const NEVER_MS = 1_000 * 86_400_000

function isTogether(first: Tray, tray: Tray): boolean {
  const [one, other] = [first.batch, tray.batch]
  const isSame = one.doughId === other.doughId && one.varietyId === other.varietyId && one.mixId === other.mixId
  return isSame && tray.urgentAtMs - first.urgentAtMs <= TOGETHER_MS
}

/** The clock of its first trays; a touch chills all of it. */
function groupItem(group: readonly Tray[], station: 'proof' | 'cooler', parts: RoomParts): readonly RoomItem[] {
  const [first] = group
  if (first === undefined) return []
  if (group.length === 1) return [batchItem(first.batch, parts)]
  const batches = group.map(({ batch }) => batch)
  const item = batchItem(first.batch, parts)
  const trays = batches.reduce((sum, batch) => sum + traysOf(batch, parts), 0)
  const page: RoomPage = { kind: 'station', station, batchIds: batches.map(({ id }) => id) }
  return [
    {
      ...item,
      what: nameOf(first.batch, piecesOf(batches), parts),
      contents: [...item.contents.slice(0, 1), parts.words.line.trays(trays)],
      acts: item.acts.length === 0 ? [] : batches.map(chilling),
      page,
    },
  ]
}

export function batchItem(batch: Batch, parts: RoomParts): RoomItem {
  const { state, nowMs, words, shop } = parts
  const until = untilOf(state, batch)
  const isProof = batch.stage === 'proof'
  const clock = isProof
    ? stageClock(batch.sinceMs, until, nowMs, words.times)
    : chillClock(batch.sinceMs, until, nowMs, words.times)
  const { ring, tone } = until === null ? NO_CLOCK : clock
  const canChill = isProof && tone !== 'plain' && shop.doughs.get(batch.doughId)?.route.includes('chill') === true
  const said = words.room.batch
  return {
    id: batch.id,
    ring,
    tone,
    what: nameOf(batch, batch.pieces, parts),
    when: '',
    contents: [
      isProof ? said.proof(until, nowMs) : said.chilled(until, nowMs),
      ...(batch.place === undefined ? [] : [said.at(batch.place)]),
    ].filter((text) => text !== ''),
    acts: canChill ? [chilling(batch)] : [],
    page: { kind: 'batch', batchId: batch.id },
  }
}

function nameOf(batch: Batch, pieces: number, { words }: RoomParts): string {
  return words.bench.station.amount(stuffOf(batch, words.names), pieces)
}

function chilling({ id, pieces }: Batch): Act {
  return { type: 'moveBatch', batchId: id, from: 'proof', to: 'chill', pieces }
}

/** Trays that a number of pieces stands on; a begun one counts. */
export function traysOf({ pieces, doughId }: Batch, { shop }: RoomParts): number {
  return Math.ceil(pieces / Math.max(1, shop.doughs.get(doughId)?.trayPieces ?? pieces))
}
