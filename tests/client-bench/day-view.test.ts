import { describe, expect, it } from 'vitest'
import type { DayParts } from '../../client/bench/day-view.ts'
import { dayView } from '../../client/bench/day-view.ts'
import type { Connection } from '../../client/live/shop-store.ts'
import { epochMs } from '../../shared-core/units.ts'
import { at, planned, stateWith } from '../core/support/make.ts'
import { wordsOf } from './support.ts'

const CLOCK = { zone: 'America/Chicago', offsets: [{ fromMs: epochMs(0), offsetMinutes: -360 }] }
const LIVE: Connection = { phase: 'live', sinceMs: at('4:00') }

function day(parts: Partial<DayParts> = {}) {
  return dayView({
    state: stateWith({ planned: [planned({ id: 'a' }), planned({ id: 'b', order: 2 })] }),
    plan: null,
    nowMs: at('6:47'),
    words: wordsOf(),
    demo: null,
    connection: LIVE,
    shopClock: CLOCK,
    deviceName: '',
    pending: 0,
    ...parts,
  })
}

describe('given the band at the top', () => {
  it('when all is well, then the time, the last load, loads to go and the link', () => {
    const view = day()
    expect([view.clock, view.toGo, view.link, view.demo]).toEqual([
      '6:47',
      ['last load in by 10:44', '2 loads to go'],
      { text: 'linked · bench tablet', short: 'linked', isTrouble: false },
      '',
    ])
    expect(view.ruler?.lastLoad?.atMs).toBe(at('10:44'))
    expect(day({ deviceName: 'Line left' }).link.text).toBe('linked · Line left')
  })

  it('when it is too late for a load, then none is spoken of', () => {
    expect(day({ nowMs: at('10:50') }).toGo).toEqual(['2 loads to go'])
  })

  it('[B6] when there is no contact, then since when, and how many taps wait', () => {
    const view = day({ connection: { phase: 'away', sinceMs: at('6:41') }, pending: 2 })
    const text = 'No contact since 6:41 – counting on · 2 taps waiting'
    expect(view.link).toEqual({ text, short: text, isTrouble: true })
    expect(day({ connection: { phase: 'catching-up', sinceMs: at('6:41') } }).link.isTrouble).toBe(false)
  })

  it('when it is a demo, then it is marked once, with or without contact', () => {
    const demo = { handsOff: false }
    expect([day({ demo }).demo, day({ demo }).link.text]).toEqual(['Demo', 'linked · bench tablet'])
    expect(day({ demo, connection: { phase: 'away', sinceMs: at('6:41') } }).demo).toBe('Demo')
  })

  it('when the shop’s clock is not known yet, then there is no ruler', () => {
    expect(day({ shopClock: null }).ruler).toBeNull()
  })
})
