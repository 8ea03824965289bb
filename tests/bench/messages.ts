import { FOLD_VERSION } from '../../shared-core/day/state.ts'
import { PROTOCOL_VERSION } from '../../shared-core/live/protocol.ts'

/** What the benches' screens say to our server, and what the floor sends in its place: messages of the same size. */

/** The hello of the nth screen. */
export function helloOf(n: number): object {
  return {
    type: 'hello',
    protocol: PROTOCOL_VERSION,
    foldVersion: FOLD_VERSION,
    buildId: '',
    isRenamed: false,
    afterSeq: null,
    journalId: null,
    course: null,
    device: { deviceId: `bench-${n}`, name: `Bench ${n}`, role: 'counter', stationId: null },
  }
}

export function idOf(n: number): string {
  return `bench${String(n).padStart(10, '0')}`
}

/** A message with one sale, the nth of all. */
export function saleOf(n: number, varietyId: string): object {
  const lines = [{ varietyId, pieces: 6 }]
  return { type: 'commands', commands: [{ id: idOf(n), deviceSeq: n + 1, tappedAtMs: null, type: 'sell', lines }] }
}

/** What our server sends for that sale: a turn with its entry. */
export function turnOf(n: number): object {
  const atMs = 1_795_000_000_000
  const lines = [{ varietyId: 'sesame', pieces: 6 }]
  const sale = {
    v: 1,
    atMs,
    type: 'stockTaken',
    varietyId: 'sesame',
    doughId: 'plain',
    fate: 'sold',
    takes: [],
    found: 6,
  }
  const told = { type: 'sell', lines }
  const entry = { seq: n + 1, commandId: idOf(n), deviceId: 'bench-0', recordedAtMs: atMs, told, events: [sale] }
  return { type: 'turn', entries: [entry], answers: [] }
}
