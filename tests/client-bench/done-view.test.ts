import { describe, expect, it } from 'vitest'
import { doneViews, dryViews, lastDoneHere } from '../../client/bench/done-view.ts'
import type { Notice } from '../../client/live/shop-store.ts'
import type { Act } from '../../shared-core/day/commands.ts'
import type { State } from '../../shared-core/day/state.ts'
import { commandId, deviceId, doughId, loadId, shelfId } from '../../shared-core/ids.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { clockShop, clockState, readings, standing } from '../core/ferment/clocks.ts'
import { at, batch, lines, loadOf, stateWith, until } from '../core/support/make.ts'
import { play } from '../core/support/play.ts'
import { ALL_STATIONS, shopWith, table } from '../core/support/shop.ts'
import { wordsOf } from './support.ts'

const HERE = deviceId('bench-1')
const WALL = deviceId('wall-1')
const PLAIN = doughId('plain')
const SCREENS = [
  {
    device: { deviceId: WALL, name: 'Boiler wall', role: 'wall', stationId: null },
    connected: true,
    seenAtMs: at('6:40'),
  },
] as const

/** Plays acts as this device; those named are then said to be the wall's. */
function stateAfter(acts: readonly Act[], byWall: readonly number[] = [], shop = shopWith()): State {
  const state = stateWith({ shop, batches: [batch({ stage: 'rack', pieces: 144 })] })
  for (const [index, act] of acts.entries()) play(state, act, { nowMs: at(`6:${40 + index}`) })
  const traces = state.traces.map((trace, index) => (byWall.includes(index) ? { ...trace, deviceId: WALL } : trace))
  return { ...state, traces }
}

const parts = (state: State, shop = shopWith()) => ({ state, deviceId: HERE, screens: SCREENS, words: wordsOf(shop) })

const loadOn = (shelf: string, variety: string): Act => {
  return { type: 'load', shelfId: shelfId(shelf), plannedId: null, lines: lines(variety, 36) }
}
const dip: Act = { type: 'dip', doughId: PLAIN, varietyId: null, pieces: 36 }

describe('[B7] given what was done', () => {
  it('when listed, then this screen’s last act stands first, whoever did more since', () => {
    const done = doneViews(
      parts(stateAfter([loadOn('s1', 'sesame'), loadOn('s2', 'poppy'), loadOn('s3', 'plain')], [2])),
    )
    expect(done.map(({ text, by }) => `${text} (${by})`)).toEqual([
      '6:41 loaded 2: Poppy 36 (this screen)',
      '6:42 loaded 3: Plain 36 (Boiler wall)',
      '6:40 loaded 1: Sesame 36 (this screen)',
    ])
    expect(done[0]?.short).toBe('6:41 loaded 2')
  })

  it('when something came after it, then it says what; else it can be taken back', () => {
    const [flipped, loaded] = doneViews(
      parts(stateAfter([loadOn('s1', 'sesame'), { type: 'flip', loadId: loadId('tap0000001.1') }])),
    )
    expect(flipped?.refusal).toBeNull()
    expect(loaded?.refusal).toContain('6:41 flipped')
  })

  it('when it is of a kind that never can be, then it says so', () => {
    const [first] = doneViews(parts(stateAfter([{ type: 'setLoadList', loads: [] }])))
    expect(first?.refusal).toMatch(/cannot be taken back/i)
  })

  it('when the last act here was a taking back, then the one before it is the last', () => {
    const state = stateAfter([loadOn('s1', 'sesame'), loadOn('s2', 'poppy')])
    const last = state.traces[1]?.commandId ?? commandId('')
    play(state, { type: 'takeBack', commandId: last }, { nowMs: at('6:45') })
    expect(lastDoneHere(parts(state))?.text).toBe('6:40 loaded 1: Sesame 36')
    expect(lastDoneHere(parts(stateAfter([dip], [0])))).toBeNull()
  })
})

describe('given an act outside its window', () => {
  const outAt = (nowMs: EpochMs) => {
    const state = stateWith({
      loaded: [loadOf({ phase: 'second-side', flippedAt: at('6:43:30') }, lines('sesame', 36))],
    })
    play(state, { type: 'out', loadId: loadId('l1'), from: 'second-side', lines: null }, { nowMs })
    return lastDoneHere(parts(state))
  }

  it.each([
    [at('6:46'), true, /, \d+ min too early$/],
    [at('7:30'), true, /, \d+ min too late$/],
    [at('6:56:30'), false, /36 pieces$/],
  ] as const)('when a load comes out at %s, then it is told how far', (nowMs, isOut, text) => {
    const done = outAt(nowMs)
    expect([done?.isOutOfWindow, done?.text]).toEqual([isOut, expect.stringMatching(text)])
  })

  it('when dough is dipped before its time, then by how much, in the shop’s language', () => {
    const state = stateWith({ batches: [batch({ stage: 'rack', pieces: 36, until: until('7:00', '7:10', '7:40') })] })
    play(state, dip, { nowMs: at('6:50') })
    expect(lastDoneHere(parts(state))?.short).toMatch(/, 10 min too early$/)
    const inSpanish = lastDoneHere({ ...parts(state), words: wordsOf(shopWith(), 'es') })
    expect(inSpanish?.short).toMatch(/, 10 min antes de tiempo$/)
  })

  it('when trays are chilled before a cold room has proofed them, then by how much, by their clock', () => {
    const shop = clockShop()
    const trays = standing({ stage: 'proof' }, shop)
    const { id: batchId, pieces } = trays
    const move = { type: 'moveBatch', batchId, from: 'proof', to: 'chill', pieces } as const
    const told = (celsius: number) => {
      const state = clockState({ shop, batches: [trays], read: [readings('room', [[at('6:00'), celsius]])] })
      play(state, move, { nowMs: at('6:47') })
      return lastDoneHere(parts(state))?.isOutOfWindow
    }
    expect([told(24), told(18)]).toEqual([false, true])
  })
})

describe('[B8] given what the board took for granted', () => {
  const shop = shopWith({ stations: table(ALL_STATIONS) })

  it('when one tap presumed several acts, then it is one thing to confirm, oldest tap first', () => {
    const state = stateAfter([loadOn('s1', 'sesame'), loadOn('s2', 'poppy')], [], shop)
    const dry = dryViews(state, [], wordsOf(shop))
    expect(dry.map(({ title, texts }) => [title, texts])).toEqual([
      ['6:40 loaded 1: Sesame 36', ['36 Plain: dipped?', '36 Plain: lifted?', '36 Plain: boarded?']],
      ['6:41 loaded 2: Poppy 36', ['36 Plain: dipped?', '36 Plain: lifted?', '36 Plain: boarded?']],
    ])
    const ids = dry.flatMap((one) => (one.kind === 'unsure' ? one.unsureIds : []))
    expect(new Set(ids)).toEqual(new Set(state.unsure.keys()))
  })

  it('when nobody remembers the tap, then what is unsure speaks for itself', () => {
    const state = { ...stateAfter([loadOn('s1', 'sesame')], [], shop), traces: [] }
    const [one] = dryViews(state, [], wordsOf(shop))
    expect(one?.title).toBe('36 Plain: dipped?')
    expect(one?.texts).toContain('36 Plain: boarded?')
  })

  it('when there are answers to taps of this screen, then they stand first, questions with their two answers', () => {
    const head = { id: commandId('c1'), deviceSeq: 1, tappedAtMs: at('6:40') }
    const refused: Notice = {
      id: 'n1',
      atMs: at('6:41'),
      kind: 'refused',
      command: { ...head, ...dip },
      refusal: { code: 'already-confirmed', params: {} },
    }
    const asked: Notice = {
      id: 'n2',
      atMs: at('6:41'),
      kind: 'ask',
      command: { ...head, ...dip },
      asks: [{ code: 'old-tap', params: { tappedAtMs: at('6:40') } }],
    }
    const state = stateAfter([loadOn('s1', 'sesame')], [], shop)
    const [first, second, third] = dryViews(state, [refused, asked], wordsOf(shop))
    expect([first?.kind, second?.kind, third?.kind]).toEqual(['notice', 'notice', 'unsure'])
    expect(first?.texts).toEqual(['Already confirmed.'])
    expect(first?.kind === 'notice' && first.answer).toBeNull()
    expect(second?.kind === 'notice' && second.answer).toEqual({ yes: 'Yes, count it', no: 'No, drop it' })
  })
})
