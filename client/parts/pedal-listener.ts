import type { PedalOutcome } from './pedal.ts'
import { NO_PEDALS, pedalStep } from './pedal.ts'

/** What of a keyboard event is read. */
export interface PedalKeyEvent {
  readonly code: string
  readonly repeat: boolean
  readonly timeStamp: number
  readonly target: EventTarget | null
  preventDefault(): void
}

/** What of `window` is listened to. */
export interface KeySource {
  addEventListener(type: 'keydown', listener: (event: PedalKeyEvent) => void): void
  removeEventListener(type: 'keydown', listener: (event: PedalKeyEvent) => void): void
}

export interface PedalListener {
  /** Say what a station shows, at every paint: only a change counts. `atMs` is `performance.now()`. */
  readonly show: (stationId: string, actKey: string | null, atMs: number) => void
  readonly close: () => void
}

/**
 * Listens to the pedals of one screen. A tied key does nothing else there, except where somebody is typing.
 * @param keys station by key code (`event.code`)
 * @param onOutcome gets what must be done or said, never `ignore`
 */
export function listenToPedals(
  source: KeySource,
  keys: ReadonlyMap<string, string>,
  onOutcome: (outcome: Exclude<PedalOutcome, { type: 'ignore' }>) => void,
): PedalListener {
  let state = NO_PEDALS
  const onKeyDown = (event: PedalKeyEvent) => {
    if (!keys.has(event.code) || isTyping(event.target)) return
    event.preventDefault()
    const press = { type: 'pressed', code: event.code, isRepeat: event.repeat, atMs: event.timeStamp } as const
    const next = pedalStep(state, press, keys)
    state = next.state
    if (next.outcome.type !== 'ignore') onOutcome(next.outcome)
  }
  source.addEventListener('keydown', onKeyDown)
  return {
    show: (stationId, actKey, atMs) => {
      state = pedalStep(state, { type: 'shown', stationId, actKey, atMs }, keys).state
    },
    close: () => source.removeEventListener('keydown', onKeyDown),
  }
}

function isTyping(target: EventTarget | null): boolean {
  return target !== null && 'tagName' in target && ['INPUT', 'TEXTAREA', 'SELECT'].includes(String(target.tagName))
}
