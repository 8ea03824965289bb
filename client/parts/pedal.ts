/**
 * Foot pedals and one-key pads act as keyboards: each is set to one key, and that key is tied to one station, so that the
 * kettle's pedal does kettle acts only. A press does the act that its station has been showing for at least half a
 * second: a foot that comes down just as the board moves on must not do an act that nobody has read. Pure; the screen
 * says what it shows and what was pressed.
 */
export interface PedalState {
  readonly stations: ReadonlyMap<string, Shown>
}

interface Shown {
  /** Null: nothing to do at this station. */
  readonly actKey: string | null
  readonly sinceMs: number
  /** When its pedal was last taken; null before. */
  readonly takenAtMs: number | null
}

export type PedalInput =
  /** Call when it may have changed; the same act again changes nothing. */
  | { readonly type: 'shown'; readonly stationId: string; readonly actKey: string | null; readonly atMs: number }
  /** `code` is the keyboard event's; times are of one clock that never goes back. */
  | { readonly type: 'pressed'; readonly code: string; readonly isRepeat: boolean; readonly atMs: number }

export type PedalOutcome =
  | { readonly type: 'do'; readonly stationId: string; readonly actKey: string }
  /** Nothing is done, and the screen says why in a few words. */
  | { readonly type: 'say'; readonly stationId: string; readonly why: 'just-changed' | 'nothing-to-do' }
  /** Not for us, or no press of its own: a held key repeats, a worn switch bounces. */
  | { readonly type: 'ignore' }

export const NO_PEDALS: PedalState = { stations: new Map() }

/** People need about this long to see what is on show and press on purpose. */
export const ON_SHOW_MS_MIN = 500
/** Two presses of one pedal within this time are one. */
export const SAME_PRESS_MS = 250

/**
 * @param keys station by key code, e.g. F13 → kettle
 * @returns the state to hand in next time, and what to do
 */
export function pedalStep(
  state: PedalState,
  input: PedalInput,
  keys: ReadonlyMap<string, string>,
): { readonly state: PedalState; readonly outcome: PedalOutcome } {
  return input.type === 'shown' ? show(state, input) : press(state, input, keys)
}

function show(state: PedalState, input: PedalInput & { type: 'shown' }) {
  const before = state.stations.get(input.stationId)
  if (before !== undefined && before.actKey === input.actKey) return { state, outcome: IGNORE }
  const shown = { actKey: input.actKey, sinceMs: input.atMs, takenAtMs: before?.takenAtMs ?? null }
  return { state: withStation(state, input.stationId, shown), outcome: IGNORE }
}

function press(state: PedalState, input: PedalInput & { type: 'pressed' }, keys: ReadonlyMap<string, string>) {
  const stationId = keys.get(input.code)
  if (stationId === undefined || input.isRepeat) return { state, outcome: IGNORE }
  const shown = state.stations.get(stationId) ?? { actKey: null, sinceMs: input.atMs, takenAtMs: null }
  const isEcho = shown.takenAtMs !== null && input.atMs - shown.takenAtMs < SAME_PRESS_MS
  if (isEcho) return { state, outcome: IGNORE }
  if (shown.actKey === null) return { state, outcome: say(stationId, 'nothing-to-do') }
  if (input.atMs - shown.sinceMs < ON_SHOW_MS_MIN) return { state, outcome: say(stationId, 'just-changed') }
  const taken = withStation(state, stationId, { ...shown, takenAtMs: input.atMs })
  return { state: taken, outcome: { type: 'do', stationId, actKey: shown.actKey } as const }
}

const IGNORE: PedalOutcome = { type: 'ignore' }

function say(stationId: string, why: 'just-changed' | 'nothing-to-do'): PedalOutcome {
  return { type: 'say', stationId, why }
}

function withStation(state: PedalState, stationId: string, shown: Shown): PedalState {
  return { stations: new Map(state.stations).set(stationId, shown) }
}
