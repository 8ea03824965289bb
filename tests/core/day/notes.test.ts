import { describe, expect, it } from 'vitest'
import { NOTES_MAX, notesOnWall, notesWaiting } from '../../../shared-core/day/notes.ts'
import { rulerOf } from '../../../shared-core/day/ruler.ts'
import type { State } from '../../../shared-core/day/state.ts'
import { commandId, noteId, shelfId } from '../../../shared-core/ids.ts'
import { at, batch, lines, minuteToMs, stateWith } from '../support/make.ts'
import { decided, outcome, play } from '../support/play.ts'

const write = (state: State, text: string, clock: string, id: string, day = 0) =>
  play(state, { type: 'writeNote', text }, { nowMs: at(clock, day), id })
const texts = (state: State) => notesWaiting(state).map(({ text }) => text)
const onWall = (state: State, clock: string, day = 0) => {
  const nowMs = at(clock, day)
  return notesOnWall(state, nowMs, rulerOf(state, nowMs, minuteToMs)).map(({ text }) => text)
}

describe('notes to the next shift', () => {
  it('[O7] given notes, then the oldest stands first, also where an older one arrives later', () => {
    const state = stateWith()
    write(state, 'rye slow', '14:00', 'note000001')
    play(
      state,
      { type: 'writeNote', text: 'school at 7:30' },
      { nowMs: at('14:10'), tappedAtMs: at('13:00'), id: 'note000002' },
    )
    expect(texts(state)).toEqual(['school at 7:30', 'rye slow'])
  })

  it('[O7] given a note cleared, then it is gone and a second touch is told; taken back, it stands again', () => {
    const state = stateWith()
    write(state, 'rye slow', '14:00', 'note000001')
    const clear = { type: 'clearNote', noteId: noteId('note000001.1') } as const
    play(state, clear, { nowMs: at('14:05'), id: 'clear00001' })
    expect(texts(state)).toEqual([])
    expect(outcome(decided(state, clear))).toBe('unknown-note')
    play(state, { type: 'takeBack', commandId: commandId('clear00001') }, { nowMs: at('14:06') })
    expect(texts(state)).toEqual(['rye slow'])
  })

  it('[O7] given as many notes as are still read, then another is refused with how many that are', () => {
    const state = stateWith()
    for (let n = 0; n < NOTES_MAX; n += 1) write(state, `note ${n}`, '14:00', `note${String(n).padStart(6, '0')}`)
    expect(decided(state, { type: 'writeNote', text: 'one more' })).toMatchObject({
      kind: 'refused',
      refusal: { code: 'too-many', params: { most: NOTES_MAX } },
    })
  })

  it('[O7] given the day closed, then its notes wait for the next', () => {
    const state = stateWith()
    write(state, 'rye slow', '14:00', 'note000001')
    play(state, { type: 'closeDay' }, { nowMs: at('15:00') })
    expect(texts(state)).toEqual(['rye slow'])
  })

  it('[O8] given notes of last night, then they stand on the wall until the first load, and at the changeover', () => {
    const state = stateWith({ day: null, batches: [batch({ pieces: 96 })] })
    write(state, 'rye slow', '18:00', 'note000001', -1)
    expect(onWall(state, '20:00', -1)).toEqual(['rye slow'])
    play(state, { type: 'openDay' }, { nowMs: at('4:00') })
    expect(onWall(state, '4:30')).toEqual(['rye slow'])
    play(
      state,
      { type: 'load', shelfId: shelfId('s1'), plannedId: null, lines: lines('sesame', 48) },
      { nowMs: at('5:00') },
    )
    expect(onWall(state, '5:01')).toEqual([])
    expect(onWall(state, '10:59')).toEqual([])
    expect(onWall(state, '11:00')).toEqual(['rye slow'])
    expect(onWall(state, '12:00')).toEqual([])
  })

  it('[O8] given no set-up to say when the changeover is, then the morning is all there is', () => {
    expect(notesOnWall(stateWith(), at('4:30'), null)).toEqual([])
  })
})
