import { describe, expect, it } from 'vitest'
import type { SoundAnswer, SoundDesk, SoundingAct, SoundNow } from '../../client/parts/sound-desk.ts'
import { BETWEEN_MS, isQuietHour, REST_MS, SILENT_DESK, soundNow } from '../../client/parts/sound-desk.ts'
import { figureOf, lengthMs } from '../../client/parts/sound-figures.ts'

const act = (key: string, kind: SoundingAct['act'], atMs = 0, isLate = false): SoundingAct => ({
  key,
  act: kind,
  atMs,
  isLate,
})
const LIFT = act('lift 1', 'lift')
const FLIP = act('flip 2', 'flip')
const OUT = act('out 3', 'out')

const moment = (nowMs: number, acts: readonly SoundingAct[], more: Partial<SoundNow> = {}): SoundNow => ({
  nowMs,
  acts,
  quietedUntilMs: new Map(),
  isQuiet: false,
  volume: 1,
  ...more,
})
const playedKey = (answer: SoundAnswer) => answer.play?.key ?? null
const lastsMs = (one: SoundingAct) => lengthMs(figureOf(one.act, one.isLate))

/** Asks ten times a second, as a screen with a ticker does, and notes what began when. */
function listen(acts: (nowMs: number) => readonly SoundingAct[], toMs: number, more: Partial<SoundNow> = {}) {
  let desk: SoundDesk = SILENT_DESK
  const heard: { key: string; atMs: number; endMs: number }[] = []
  for (let nowMs = 0; nowMs <= toMs; nowMs += 100) {
    const answer = soundNow(desk, moment(nowMs, acts(nowMs), more))
    desk = answer.desk
    if (answer.play !== null)
      heard.push({ key: answer.play.key, atMs: nowMs, endMs: nowMs + lengthMs(answer.play.figure) })
  }
  return heard
}

describe('the sound desk', () => {
  it('given nothing due, plays nothing', () => {
    expect(soundNow(SILENT_DESK, moment(1_000, []))).toEqual({ desk: SILENT_DESK, stop: false, play: null })
  })

  it('given an act before its time, waits until it is due', () => {
    const early = act('out 3', 'out', 5_000)
    expect(playedKey(soundNow(SILENT_DESK, moment(4_999, [early])))).toBeNull()
    expect(playedKey(soundNow(SILENT_DESK, moment(5_000, [early])))).toBe('out 3')
  })

  it('given several, plays the most urgent, in its own figure and at the device’s volume', () => {
    const { play } = soundNow(SILENT_DESK, moment(0, [LIFT, FLIP, OUT], { volume: 0.4 }))
    expect(play).toEqual({ key: 'lift 1', figure: figureOf('lift', false), volume: 0.4 })
  })

  it('plays one at a time, with silence between, and lets each be heard', () => {
    const heard = listen(() => [LIFT, FLIP, OUT], 60_000)
    expect(heard.slice(0, 3).map(({ key }) => key)).toEqual(['lift 1', 'flip 2', 'out 3'])
    for (const [index, one] of heard.entries()) {
      const before = heard[index - 1]
      if (before !== undefined) expect(one.atMs).toBeGreaterThanOrEqual(before.endMs + BETWEEN_MS)
    }
  })

  it('given an act that nobody does, repeats it, three times close together and then calmer', () => {
    const starts = listen(() => [LIFT], 60_000).map(({ atMs }) => atMs)
    const rests = starts.slice(1).map((atMs, index) => atMs - (starts[index] ?? 0) - lastsMs(LIFT))
    // The desk is asked every 100 ms, so that a rest ends up to that much later.
    const around = (ms: number) => [expect.any(Number), ms] as const
    expect(rests.length).toBeGreaterThanOrEqual(4)
    for (const [index, restMs] of rests.entries()) {
      const [, wanted] = around(index < REST_MS.closeTimes - 1 ? REST_MS.first : REST_MS.later)
      expect(restMs).toBeGreaterThanOrEqual(wanted)
      expect(restMs).toBeLessThan(wanted + 100)
    }
  })

  it('given an act done while it sounds, stops it at once and goes on with the next', () => {
    const first = soundNow(SILENT_DESK, moment(0, [LIFT, FLIP]))
    const second = soundNow(first.desk, moment(50, [FLIP]))
    expect([second.stop, playedKey(second)]).toEqual([true, 'flip 2'])
  })

  it('given the only act done while it sounds, stops it and plays nothing', () => {
    const first = soundNow(SILENT_DESK, moment(0, [LIFT]))
    const second = soundNow(first.desk, moment(50, []))
    expect(second).toEqual({ desk: SILENT_DESK, stop: true, play: null })
  })

  it('given a more urgent act while a figure sounds, lets it end first', () => {
    const first = soundNow(SILENT_DESK, moment(0, [OUT]))
    const during = soundNow(first.desk, moment(500, [LIFT, OUT]))
    expect([during.stop, playedKey(during)]).toEqual([false, null])
    const after = soundNow(during.desk, moment(lastsMs(OUT) + BETWEEN_MS, [LIFT, OUT]))
    expect(playedKey(after)).toBe('lift 1')
  })

  it('given "coming", stops that act for as long as it holds and no other', () => {
    const quieted = { quietedUntilMs: new Map([['lift 1', 45_000]]) }
    const first = soundNow(SILENT_DESK, moment(0, [LIFT]))
    const second = soundNow(first.desk, moment(200, [LIFT, FLIP], quieted))
    expect([second.stop, playedKey(second)]).toEqual([true, 'flip 2'])
    const heard = listen(() => [LIFT, FLIP], 60_000, quieted)
    expect(heard.some(({ key, atMs }) => key === 'lift 1' && atMs < 45_000)).toBe(false)
    expect(heard.some(({ key, atMs }) => key === 'lift 1' && atMs >= 45_000 && atMs < 48_000)).toBe(true)
    expect(heard.some(({ key, atMs }) => key === 'flip 2' && atMs < 45_000)).toBe(true)
  })

  it('given an act that becomes late while it rests, says so at once, with the late figure', () => {
    const heard = listen((nowMs) => [act('out 3', 'out', 0, nowMs >= 3_000)], 4_000)
    expect(heard.map(({ atMs }) => atMs)).toEqual([0, 3_000])
    const lateAnswer = soundNow(SILENT_DESK, moment(0, [act('out 3', 'out', 0, true)]))
    expect(lateAnswer.play?.figure).toEqual(figureOf('out', true))
  })

  it.each([{ isQuiet: true }, { volume: 0 }, { volume: Number.NaN }])(
    'given %o, is silent and stops what sounds',
    (more) => {
      const first = soundNow(SILENT_DESK, moment(0, [LIFT]))
      const second = soundNow(first.desk, moment(100, [LIFT], more))
      expect([second.stop, second.play]).toEqual([true, null])
      expect(listen(() => [LIFT, FLIP], 30_000, more)).toEqual([])
    },
  )

  it('forgets acts that are gone', () => {
    let desk: SoundDesk = SILENT_DESK
    for (let index = 0; index < 500; index++) {
      desk = soundNow(desk, moment(index * 10_000, [act(`flip ${index}`, 'flip')])).desk
    }
    expect(desk.rests.size).toBe(1)
  })
})

describe('quiet hours', () => {
  it.each([
    // from  to     at     quiet
    [1320, 240, 1320, true],
    [1320, 240, 1439, true],
    [1320, 240, 0, true],
    [1320, 240, 239, true],
    [1320, 240, 240, false],
    [1320, 240, 720, false],
    [780, 840, 780, true],
    [780, 840, 840, false],
    [600, 600, 600, false],
  ])('from minute %i to %i, at %i: %s', (fromMinute, toMinute, minute, quiet) => {
    expect(isQuietHour(minute, { fromMinute, toMinute })).toBe(quiet)
  })

  it('are none when none are set', () => {
    expect(isQuietHour(0, null)).toBe(false)
  })
})
