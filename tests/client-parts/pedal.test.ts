import { describe, expect, it } from 'vitest'
import type { PedalInput, PedalOutcome, PedalState } from '../../client/parts/pedal.ts'
import { NO_PEDALS, ON_SHOW_MS_MIN, pedalStep, SAME_PRESS_MS } from '../../client/parts/pedal.ts'
import type { KeySource, PedalKeyEvent } from '../../client/parts/pedal-listener.ts'
import { listenToPedals } from '../../client/parts/pedal-listener.ts'

const KEYS = new Map([
  ['F13', 'kettle'],
  ['F14', 'oven'],
])
const shown = (atMs: number, actKey: string | null, stationId = 'kettle'): PedalInput => ({
  type: 'shown',
  stationId,
  actKey,
  atMs,
})
const pressed = (atMs: number, code = 'F13', isRepeat = false): PedalInput => ({
  type: 'pressed',
  code,
  isRepeat,
  atMs,
})
const IGNORE = { type: 'ignore' }
const does = (actKey: string, stationId = 'kettle') => ({ type: 'do', stationId, actKey })
const says = (why: string, stationId = 'kettle') => ({ type: 'say', stationId, why })

/** The outcome of the last input. */
function outcomeOf(...inputs: readonly PedalInput[]): PedalOutcome {
  let state: PedalState = NO_PEDALS
  let outcome: PedalOutcome = { type: 'ignore' }
  for (const input of inputs) ({ state, outcome } = pedalStep(state, input, KEYS))
  return outcome
}

describe('a pedal', () => {
  it.each([
    ['a press on an act shown for half a second', [shown(0, 'lift 1'), pressed(ON_SHOW_MS_MIN)], does('lift 1')],
    ['a press too soon after the act came up', [shown(0, 'lift 1'), pressed(ON_SHOW_MS_MIN - 1)], says('just-changed')],
    [
      'a press just as the board moves on',
      [shown(0, 'lift 1'), shown(9_900, 'dip 2'), pressed(10_000)],
      says('just-changed'),
    ],
    [
      'the same act said again at every paint',
      [shown(0, 'lift 1'), shown(400, 'lift 1'), pressed(500)],
      does('lift 1'),
    ],
    [
      'an act that came back: it counts from its return',
      [shown(0, 'lift 1'), shown(600, 'dip 2'), shown(700, 'lift 1'), pressed(1_000)],
      says('just-changed'),
    ],
    ['nothing on show', [shown(0, null), pressed(5_000)], says('nothing-to-do')],
    ['a station that has never shown anything', [pressed(5_000)], says('nothing-to-do')],
    ['a held key', [shown(0, 'lift 1'), pressed(1_000, 'F13', true)], IGNORE],
    ['a key that is tied to nothing', [shown(0, 'lift 1'), pressed(1_000, 'KeyA')], IGNORE],
    ['a bouncing switch', [shown(0, 'lift 1'), pressed(1_000), pressed(1_000 + SAME_PRESS_MS - 1)], IGNORE],
    ['a second press on purpose', [shown(0, 'lift 1'), pressed(1_000), pressed(1_000 + SAME_PRESS_MS)], does('lift 1')],
    [
      'a bounce after the board moved on at once',
      [shown(0, 'lift 1'), pressed(1_000), shown(1_010, 'dip 2'), pressed(1_100)],
      IGNORE,
    ],
    [
      'another station’s pedal: its own act, never the kettle’s',
      [shown(0, 'lift 1'), shown(0, 'flip 2', 'oven'), pressed(900, 'F14')],
      does('flip 2', 'oven'),
    ],
    [
      'another station’s pedal with nothing to do',
      [shown(0, 'lift 1'), pressed(900, 'F14')],
      says('nothing-to-do', 'oven'),
    ],
  ] as const)('given %s', (_what, inputs, outcome) => {
    expect(outcomeOf(...inputs)).toEqual(outcome)
  })

  it('leaves the state as it was: each step gives a new one', () => {
    const before = pedalStep(NO_PEDALS, shown(0, 'lift 1'), KEYS).state
    pedalStep(before, pressed(1_000), KEYS)
    expect(outcomeOf(shown(0, 'lift 1'), pressed(1_000))).toEqual(pedalStep(before, pressed(1_000), KEYS).outcome)
    expect(NO_PEDALS.stations.size).toBe(0)
  })
})

describe('the listener', () => {
  it('hands on what must be done and said, and keeps a tied key from doing anything else', () => {
    const page = fakePage()
    const outcomes: PedalOutcome[] = []
    const listener = listenToPedals(page.source, KEYS, (outcome) => outcomes.push(outcome))
    listener.show('kettle', 'lift 1', 100)
    expect(page.press({ code: 'F13', timeStamp: 200 })).toBe('kept')
    expect(page.press({ code: 'F13', timeStamp: 700 })).toBe('kept')
    expect(page.press({ code: 'F13', timeStamp: 730, repeat: true })).toBe('kept')
    expect(page.press({ code: 'KeyA', timeStamp: 800 })).toBe('passed')
    expect(outcomes).toEqual([says('just-changed'), does('lift 1')])
    listener.close()
    expect(page.press({ code: 'F13', timeStamp: 5_000 })).toBe('passed')
  })

  it('leaves a key alone where somebody is typing', () => {
    const page = fakePage()
    const outcomes: PedalOutcome[] = []
    listenToPedals(page.source, KEYS, (outcome) => outcomes.push(outcome)).show('kettle', 'lift 1', 0)
    expect(
      page.press({ code: 'F13', timeStamp: 900, target: Object.assign(new EventTarget(), { tagName: 'INPUT' }) }),
    ).toBe('passed')
    expect(outcomes).toEqual([])
  })
})

/** A page that has key presses and nothing else. */
function fakePage() {
  const listeners = new Set<(event: PedalKeyEvent) => void>()
  const source: KeySource = {
    addEventListener: (_type, listener) => listeners.add(listener),
    removeEventListener: (_type, listener) => listeners.delete(listener),
  }
  const press = (parts: { code: string; timeStamp: number; repeat?: boolean; target?: EventTarget }) => {
    let kept: 'kept' | 'passed' = 'passed'
    const event = { repeat: false, target: null, preventDefault: () => (kept = 'kept'), ...parts }
    for (const listener of listeners) listener(event)
    return kept
  }
  return { source, press }
}
