import { describe, expect, it } from 'vitest'
import { defaultSettings } from '../../client/live/device-settings.ts'
import type { Notice } from '../../client/live/shop-store.ts'
import { isSame } from '../../client/wall/same-view.tsx'
import { widthOf } from '../../client/wall/text-lines.ts'
import { commandId, loadId } from '../../shared-core/ids.ts'
import { at, batch, lines, loadOf, planned, stateWith, until } from '../core/support/make.ts'
import { ALL_STATIONS, shopWith, station, table } from '../core/support/shop.ts'
import { viewOf } from './support/wall.ts'

const NOW = at('6:47')
const DIPPED = batch({ id: 'k', stage: 'kettle', since: at('6:46:30'), until: until('6:47:10', '6:47:22', '6:47:50') })
const LOADED = loadOf(
  { loadedAt: at('6:44'), flip: until('6:47', '6:47:40', '6:49'), out: until('6:58', '7:00', '7:02') },
  lines('sesame', 48),
)
const BUSY = { batches: [DIPPED], loaded: [LOADED], planned: [planned()] }
const TAPPED = shopWith({ stations: table(ALL_STATIONS) })

describe('what stands in the middle', () => {
  it('given no contact yet, then it says what is looked for; given no set-up, what to do', () => {
    expect(viewOf(null, NOW).body).toMatchObject({ kind: 'empty', title: ['Looking for the shop…'] })
    expect(viewOf(stateWith({ shop: null, day: null }), NOW).body).toMatchObject({
      kind: 'empty',
      title: ['No shop is set up here yet'],
    })
  })

  it('given a morning before the first act, then it says what opens the day; given an empty line, that', () => {
    expect(viewOf(stateWith({ day: null }), at('3:30')).body).toMatchObject({ kind: 'empty', title: ['Good morning'] })
    expect(viewOf(stateWith(), at('3:30')).body).toMatchObject({ kind: 'empty', title: ['The line is empty'] })
  })

  it('[G6] given pieces in kettle, on boards or in the oven, then the line; given only such that stand, what stands', () => {
    expect(viewOf(stateWith(BUSY), NOW).body.kind).toBe('line')
    expect(viewOf(stateWith({ batches: [batch({ stage: 'boards' })] }), NOW).body.kind).toBe('line')
    expect(viewOf(stateWith({ batches: [batch({ stage: 'chill' })] }), NOW).body.kind).toBe('standing')
  })

  it.each([
    [['load'], '7:00:00', 'standing'],
    [['load'], '7:00:01', 'line'],
    [['dip', 'load'], '7:00:00', 'line'],
    [['dip', 'load'], '6:40', 'standing'],
  ] as const)(
    '[G6] given dough on the rack and a load at 7:30:01, when %j is tapped and it is %s, then the middle is the %s',
    (acts, now, kind) => {
      const shop = shopWith({ stations: table([station('line', acts)]) })
      const plan = planned({ inAt: at('7:30:01'), lines: lines('plain', 36) })
      const rack = batch({ until: until('5:40', '6:00', '9:40') })
      expect(viewOf(stateWith({ shop, batches: [rack], planned: [plan] }), at(now)).body.kind).toBe(kind)
    },
  )

  it('[G6] given a kettle that nobody taps, then the plan’s next dips stand in its place; given one that is tapped, the ring', () => {
    const kettle = (shop: ReturnType<typeof shopWith>) => {
      const { body } = viewOf(
        stateWith({ shop, loaded: [LOADED], planned: [planned({ lines: lines('plain', 72) })] }),
        NOW,
      )
      return body.kind === 'line' ? body.line.kettle : null
    }
    const untapped = kettle(shopWith({ stations: table([station('line', ['load', 'flip', 'out'])]) }))
    expect(untapped?.form).toBe('dips')
    expect(untapped?.form === 'dips' && untapped.view.dips.map(({ title }) => title.count)).toEqual(['36', '36'])
    expect(kettle(TAPPED)?.form).toBe('ring')
  })

  it('given boards beyond those there are, then that is trouble, in words', () => {
    const short = viewOf(
      stateWith({ batches: [batch({ stage: 'boards', variety: 'sesame', pieces: 24 * 6 + 12 })] }),
      NOW,
    ).body
    expect(short.kind === 'line' && short.line.ovenNotes[0]).toEqual({ text: '2 boards short', isTrouble: true })
  })
})

describe('what is said when something is wrong', () => {
  it('[G4] given no contact, then it says since when, and all goes on counting', () => {
    const away = { connection: { phase: 'away', sinceMs: at('6:41') } as const }
    const first = viewOf(stateWith({ shop: TAPPED, ...BUSY }), NOW, away)
    expect(first.status).toEqual({ text: 'No contact since 6:41 – counting on', isTrouble: true })
    expect(first.bar.lines).toEqual([{ strong: 'Lift', rest: 'in 22 s' }])
    const later = viewOf(stateWith({ shop: TAPPED, ...BUSY }), at('6:47:10'), away)
    expect(later.bar.lines).toEqual([{ strong: 'Lift', rest: 'in 12 s' }])
    const { body } = first
    expect(body.kind === 'line' && body.line.oven.rows[0]?.contents).toBe('Sesame 48')
  })

  it('given a link that is lost for a breath only, then nothing moves for it', () => {
    const status = (now: string) =>
      viewOf(stateWith(BUSY), at(now), { connection: { phase: 'away', sinceMs: NOW } }).status
    expect(status('6:47:01')).toBeNull()
    expect(status('6:47:02')?.text).toBe('No contact since 6:47 – counting on')
  })

  it('given a page that is too old, then it calls for nothing: what it shows stands still', () => {
    const stale = viewOf(stateWith(BUSY), NOW, { connection: { phase: 'stale', sinceMs: NOW } })
    expect(stale.acts).toEqual([])
    expect(stale.status?.text).toContain('reload')
  })

  it('given a refused pedal, then the reason stands for twenty seconds; a question stays', () => {
    const flip = { id: commandId('k1'), deviceSeq: 1, tappedAtMs: NOW, type: 'flip', loadId: loadId('l1') } as const
    const refused: Notice = {
      id: 'k1',
      atMs: NOW,
      kind: 'refused',
      command: flip,
      refusal: { code: 'already-flipped', params: { shelfId: 's1' } },
    }
    const status = (seconds: string, notices: readonly Notice[]) =>
      viewOf(stateWith(BUSY), at(`6:47:${seconds}`), { notices }).status?.text
    expect(status('19', [refused])).toBe('Already done: shelf 1 was flipped.')
    expect(status('20', [refused])).toBeUndefined()
    const asked: Notice = { id: 'k2', atMs: NOW, kind: 'ask', command: flip, asks: [{ code: 'old-tap', params: {} }] }
    expect(status('59', [asked, refused])).toBe('1 question waits: touch the clock')
  })
})

describe('below the clock', () => {
  it.each([
    ['a demo without sound yet', { demo: { handsOff: false }, sound: 'needs-touch' }, 'Demo · touch for sound'],
    ['a shop with sound', { sound: 'on' }, ''],
    ['no sound wanted', { sound: 'off' }, 'no sound'],
    ['quiet hours', { sound: 'quiet-hours' }, 'quiet hours'],
  ] as const)('given %s, then it is said', (_, parts, note) => {
    expect(viewOf(stateWith(BUSY), NOW, parts).note).toBe(note)
  })
})

describe('how the wall reads', () => {
  it('given the device’s language, then the wall is in it, whatever the shop’s', () => {
    const view = viewOf(stateWith({ shop: TAPPED, ...BUSY }), NOW, {
      settings: { ...defaultSettings('wall'), language: 'es' },
    })
    expect(view.bar.lines).toEqual([{ strong: 'Levantar', rest: 'en 22 s' }])
  })

  it('given larger text asked for, then it is larger; given smaller, then no smaller than the distance asks', () => {
    const minPx = (textPercent: number) =>
      viewOf(stateWith(BUSY), NOW, { settings: { ...defaultSettings('wall'), textPercent } }).sizes.minPx
    expect(minPx(130)).toBeGreaterThan(minPx(100))
    expect(minPx(80)).toBe(minPx(100))
  })

  it('given two ticks within a second, then nothing but rings is painted anew', () => {
    const panes = (now: string) => {
      const { body, bar, rods, ruler, clock } = viewOf(stateWith({ shop: TAPPED, ...BUSY }), at(now))
      return { bar, rods, ruler, clock, rest: body.kind === 'line' ? { ...body.line, kettle: null, oven: null } : null }
    }
    const [one, other] = [panes('6:47:05'), panes('6:47:05')]
    expect(one.bar).not.toBe(other.bar)
    expect(isSame(one, other)).toBe(true)
    expect(isSame(panes('6:47:05'), panes('6:47:06'))).toBe(false)
  })
})

describe('words in place of the line', () => {
  it.each(['en', 'es'] as const)(
    '[G2] given any reason for an empty wall in %s, then its words fit beside the ring',
    (language) => {
      const settings = { ...defaultSettings('wall'), language }
      const states = [null, stateWith({ shop: null, day: null }), stateWith({ day: null }), stateWith()]
      for (const state of states) {
        const { body, layout, sizes } = viewOf(state, NOW, { settings })
        if (body.kind !== 'empty') throw new Error(`not empty: ${body.kind}`)
        const roomPx = layout.middle.width - body.ringPx - sizes.labelPx
        for (const line of body.title) expect(widthOf(line, sizes.headlinePx, 'strong')).toBeLessThanOrEqual(roomPx)
        for (const line of body.text) expect(widthOf(line, sizes.labelPx)).toBeLessThanOrEqual(roomPx)
        const heightPx = 1.2 * (body.title.length * sizes.headlinePx + body.text.length * sizes.labelPx)
        expect(heightPx).toBeLessThanOrEqual(layout.middle.height)
      }
    },
  )
})
