import { describe, expect, it } from 'vitest'
import { afternoonView } from '../../client/wall/afternoon-view.ts'
import { notesView } from '../../client/wall/notes-view.ts'
import { changeText } from '../../client/wall/shift-view.ts'
import { stepsView } from '../../client/wall/steps-view.ts'
import { noteWords } from '../../client/words/notes.ts'
import { shiftWords } from '../../client/words/shift.ts'
import type { ChangeoverNow } from '../../shared-core/day/changeover.ts'
import { openingList } from '../../shared-core/day/opening-list.ts'
import { rulerOf } from '../../shared-core/day/ruler.ts'
import type { State } from '../../shared-core/day/state.ts'
import type { StepList } from '../../shared-core/day/step-list.ts'
import { deviceId, noteId, personId, shelfId, stepId, varietyId } from '../../shared-core/ids.ts'
import { at, batch, lines, minuteToMs, planned, stateWith } from '../core/support/make.ts'
import { play } from '../core/support/play.ts'
import { PEOPLE, STEPS, shopWith, step, table } from '../core/support/shop.ts'
import { LAYOUT, SIZES, setting, viewOf } from './support/wall.ts'

const NOW = at('3:50')
const SHOP = shopWith({ steps: table(STEPS), people: table(PEOPLE) })
const morning = (parts: Parameters<typeof stateWith>[0] = {}): State =>
  stateWith({ shop: SHOP, recordedAt: at('3:40'), ...parts })
const setFor = (shop = SHOP) => ({ ...setting(shop, NOW), shift: shiftWords(setting(shop, NOW).words) })

function listOf(state: State, nowMs = NOW): StepList {
  const list = openingList(state, nowMs, rulerOf(state, nowMs, minuteToMs))
  if (list === null) throw new Error('There is no opening list.')
  return list
}

describe('the opening on the wall', () => {
  it('[G9] given steps late, due and to come, then soonest first, each with its time, and what is done below with who', () => {
    const state = morning({ batches: [batch({ id: 'p', stage: 'proof', pieces: 60 })] })
    play(state, { type: 'doStep', stepId: stepId('oven-on'), doughId: null, personId: personId('ana') }, { nowMs: NOW })
    const view = stepsView({ ...setFor(), list: listOf(state), which: 'opening', box: LAYOUT.middle })
    expect(view.title).toBe('First load in 40 min')
    expect(view.progress).toBe('1 of 3 done')
    expect(view.rows.map(({ name, when, tone }) => [name, when, tone])).toEqual([
      ['Kettle-lit', 'now', 'act'],
      ['Float Plain', '4:10', 'plain'],
    ])
    expect(view.done).toBe('Oven-on done 3:50 Ana')
  })

  it('[G9] given more steps than there is room for, then the soonest are shown and the others counted', () => {
    const many = Array.from({ length: 14 }, (_, n) => step({ id: `s${n}`, order: n, offsetMs: -n * 60_000 }))
    const shop = shopWith({ steps: table(many) })
    const view = stepsView({ ...setFor(shop), list: listOf(morning({ shop })), which: 'opening', box: LAYOUT.middle })
    expect(view.rows.length).toBeGreaterThan(2)
    expect(view.rows[0]?.name).toBe('S13')
    expect(view.rest).toBe(`${14 - view.rows.length} more`)
    const heightPx = view.titlePx * 1.25 + view.rows.length * view.rowPx + SIZES.minPx * 1.3
    expect(heightPx).toBeLessThanOrEqual(LAYOUT.middle.height)
  })

  it('[G9] given nothing in kettle or oven, then the list has the wall; given a first dip, then the oven’s place', () => {
    const state = morning({ planned: [planned({ lines: lines('sesame', 36) })] })
    expect(viewOf(state, NOW).body.kind).toBe('steps')
    const busy = morning({
      batches: [batch({ id: 'k', stage: 'kettle', pieces: 36, since: at('3:49') })],
      planned: [planned({ lines: lines('sesame', 36) })],
    })
    const view = viewOf(busy, NOW)
    expect(view.body).toMatchObject({ kind: 'line', steps: { place: 'oven' } })
    // A load that cannot be read is not a pedal's to do.
    const body = view.body.kind === 'line' ? view.body : null
    expect(body?.line.onShow.some((key) => key.startsWith('load'))).toBe(false)
  })
})

describe('notes on the wall', () => {
  const note = (n: number, text: string) => ({ id: noteId(`n${n}`), text, atMs: at('3:00'), deviceId: deviceId('d') })

  it('[G10] given notes before the first load, then they stand beside the list, and there is no mark; after it a mark alone', () => {
    const state = morning()
    play(state, { type: 'writeNote', text: 'rye slow' }, { nowMs: NOW })
    const before = viewOf(state, NOW)
    expect(before.notes?.items.map(({ lines: [line] }) => line)).toEqual(['rye slow'])
    expect(before.note).toBe('')
    const load = { type: 'load', shelfId: shelfId('s1'), plannedId: null, lines: lines('plain', 36) } as const
    play(state, load, { nowMs: at('4:40') })
    const after = viewOf(state, at('4:41'))
    expect(after.notes).toBeNull()
    expect(after.note).toBe('1 note')
  })

  it('[G10] given more notes than there is room for, then whole ones are shown, and the others counted', () => {
    const notes = Array.from({ length: 9 }, (_, n) => note(n, `school moved to 7:30, ask for the boxes again ${n}`))
    const box = { ...LAYOUT.middle, width: 600 }
    const { words } = setFor()
    const view = notesView({ notes, words: noteWords(words), box, sizes: SIZES })
    expect(view.items.length).toBeGreaterThan(0)
    expect(view.rest).toBe(`${9 - view.items.length} more`)
  })
})

describe('the changeover on the wall', () => {
  const turn = (name: string, state: 'bagels' | 'emptying' | 'over') => ({
    shelfId: shelfId(`s${name}`),
    name,
    state,
    freeAtMs: state === 'over' ? null : at('10:52'),
    reading: null,
  })
  const change = (shelves: ChangeoverNow['shelves']): ChangeoverNow => ({
    fromMs: at('11:00'),
    toMs: at('12:00'),
    slipMs: 0,
    shelves,
    reading: { degrees: 480, unit: 'F', atMs: at('10:20'), ageMs: 0 },
    ovenEmptyAtMs: at('10:52'),
    isOver: false,
    left: [],
    withoutShelf: [],
    slipped: () => {
      throw new Error('Nothing is slipped here.')
    },
  })
  const { shift } = setFor()
  const room = (roomPx: number) => ({ roomPx, fontPx: SIZES.minPx, weight: 'strong' as const })
  const said = (shelves: ChangeoverNow['shelves'], roomPx: number, next = '', ...more: string[]) =>
    changeText(change(shelves), next, { shift, nowMs: at('10:15'), room: room(roomPx), more })

  it('[G11] given room, then when, what is next, each shelf, the empty oven and its heat', () => {
    expect(said([turn('1', 'over'), turn('2', 'emptying'), turn('3', 'bagels')], 9_000, 'Drain 10:50')).toBe(
      'Changeover in 45 min · Drain 10:50 · 1: over · 2: emptying to 10:52 · 3: bagels · oven empty at 10:52 · 480 °F at 10:20',
    )
  })

  it('[Q143] given what the last loads should carry more of, then it stands right after the time, before any shelf', () => {
    const more = 'Last load by 10:38: 12 more Sesame'
    const shelves = [turn('1', 'over'), turn('2', 'bagels')]
    expect(said(shelves, 9_000, 'Drain 10:50', more)).toMatch(
      /^Changeover in 45 min · Last load by 10:38: 12 more Sesame · Drain/,
    )
    expect(said(shelves, 1_400, 'Drain 10:50', more)).toBe(`Changeover in 45 min · ${more}`)
    expect(said(shelves, 1_400, '', `${more}, ${'6 Plain, '.repeat(40)}`, more)).toBe(`Changeover in 45 min · ${more}`)
    expect(said(shelves, 900, '', more)).toBe('Changeover in 45 min · 1: over · 2: bagels')
    expect(said(shelves, 400, '', more)).toBe('Changeover in 45 min')
  })

  it('[G11] given twelve shelves, then they are counted by what they are', () => {
    const shelves = Array.from({ length: 12 }, (_, n) => turn(String(n + 1), n < 3 ? 'over' : 'bagels'))
    expect(said(shelves, 1_800)).toBe('Changeover in 45 min · 9 take bagels · 3 over · oven empty at 10:52')
    expect(said(shelves, 400)).toBe('Changeover in 45 min')
  })
})

describe('what is left for the afternoon', () => {
  const left = (count: number) =>
    Array.from({ length: count }, (_, n) => ({ varietyId: varietyId(`v${n}`), pieces: n + 1 }))
  const view = (count: number) => afternoonView({ ...setFor(), change: { left: left(count) }, box: LAYOUT.middle })

  it('[G12] given a few varieties, then all of them in the order of the set-up, and that none is baked after this', () => {
    const shown = view(4)
    expect(shown.title).toEqual(['Left for the afternoon'])
    expect(shown.columns.flat().map(({ count }) => count)).toEqual(['1', '2', '3', '4'])
    expect(shown.note.join(' ')).toBe('No more bagels are baked today.')
    expect(shown.rest).toBe('')
  })

  it('[G12] given more than fit, then those of which most is left, and how many others there are', () => {
    const shown = view(40)
    const items = shown.columns.flat()
    expect(items[0]?.count).toBe('40')
    expect(shown.rest).toBe(`${40 - items.length} more`)
  })

  it('[G12] given none left, then it says so', () => {
    expect(view(0).title.join(' ')).toBe('Nothing is left for the afternoon.')
  })
})
