import { describe, expect, it } from 'vitest'
import { isWorthASound, pedalAct, roomSound, soundingRoomAct } from '../../client/parts/calls.ts'
import type { Sounding } from '../../client/parts/sound-figures.ts'
import { figureOf } from '../../client/parts/sound-figures.ts'
import type { BodyView } from '../../client/wall/body-view.ts'
import { contentsText } from '../../client/wall/oven-row.ts'
import { widthOf } from '../../client/wall/text-lines.ts'
import type { Batch, State } from '../../shared-core/day/state.ts'
import type { Mix } from '../../shared-core/dough/mix.ts'
import { mixId } from '../../shared-core/ids.ts'
import type { Language } from '../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { spanMs } from '../../shared-core/units.ts'
import { formula, mix, sheetLine } from '../core/dough/room-mix.ts'
import { at, batch, lines, load, loadOf, planned, stateWith, until } from '../core/support/make.ts'
import { ALL_STATIONS, dough, shopWith, table } from '../core/support/shop.ts'
import { PANEL, SIZES, viewOf } from './support/wall.ts'

const NOW = at('12:00')
const SHOP = shopWith({ cooler: { trays: 40, keepsAt: null }, stations: table(ALL_STATIONS) })

function stateOf(mixes: readonly Mix[], parts: Parameters<typeof stateWith>[0] = {}): State {
  const state = stateWith({ shop: SHOP, ...parts })
  for (const one of mixes) state.mixes.set(one.id, one)
  return state
}

function wall(mixes: readonly Mix[], parts: Parameters<typeof stateWith>[0] = {}, nowMs: EpochMs = NOW) {
  return viewOf(stateOf(mixes, parts), nowMs)
}

function doughOf(body: BodyView) {
  if (body.kind !== 'dough') throw new Error(`the wall shows ${body.kind}`)
  return body.dough
}

const texts = (column: ReturnType<typeof doughOf>['mixes']) =>
  column.set.rows.map(({ what, when, contents }) => `${what} ${when} | ${contents}`)

const RAISIN = formula({ id: 'raisin', name: 'Cinnamon', mixInMs: spanMs(10, 'min') })
const MIXING = mix('mixing', at('11:55'), {
  id: 'm2',
  formula: RAISIN,
  mixedAtMs: at('11:55'),
  lines: [sheetLine('flour'), sheetLine('raisins', { at: 'mixIn' })],
  gives: [{ doughId: dough({ id: 'plain' }).id, pieces: 96, pieceMilligrams: 120_000 }],
})
const RESTING = mix('rest', at('11:50'), { id: 'm1', mixedAtMs: at('11:38') })
const NEXT = mix('planned', at('5:00'), { id: 'm3', startAtMs: at('12:20'), formula: formula({ name: 'Rye' }) })
const BENCH = mix('bench', at('11:30'), {
  id: 'm4',
  mixedAtMs: at('11:10'),
  gives: [{ doughId: dough({ id: 'plain' }).id, pieces: 100, pieceMilligrams: 100_000 }],
  shapedMilligrams: 4_000_000,
})
const PROOFING: Batch = {
  ...batch({ id: 'p', stage: 'proof', pieces: 60, since: at('9:10'), until: until('11:00', '12:10', '13:00') }),
  mixId: mixId('m0'),
}
const CHILLED = batch({
  id: 'c',
  stage: 'chill',
  pieces: 46,
  until: { ...until('0:00', '6:00', '0:00'), latestAtMs: at('18:00', 2) },
})

describe('the dough room on the wall', () => {
  it('[D105] given a quiet line and mixing on, then mixes, what proofs and the cooler have the middle', () => {
    const { mixes, trays } = doughOf(wall([NEXT, RESTING, MIXING], { batches: [PROOFING, CHILLED] }).body)
    expect(texts(mixes)).toEqual([
      'Rest over: Plain now | ',
      'Cinnamon in 5 min | 96 Plain, mix-ins next',
      'Rye in 20 min | next',
    ])
    expect(texts(trays)).toEqual(['60 Plain in 10 min | 4 trays'])
    expect([mixes.heading, trays.heading, trays.note]).toEqual(['Mixes', 'Proofing', 'cooler 4 of 40 trays'])
  })

  it('[D105] given a mix on the bench, then it says how many pieces are shaped, whatever they weigh, and its ring how much dough is not', () => {
    const small = { ...PROOFING, pieces: 55, mixId: mixId('m4') }
    const [row] = doughOf(wall([BENCH], { batches: [PROOFING, small] }).body).mixes.set.rows
    expect(row).toMatchObject({ what: 'Plain', contents: '55 of 100 shaped, on the bench', ring: { fraction: 0.6 } })
  })

  it('[D105] given more trays in the cooler than it holds, then that is trouble', () => {
    const full = { ...CHILLED, pieces: 41 * 15 }
    expect(doughOf(wall([RESTING], { batches: [full] }).body).trays).toMatchObject({
      note: 'cooler 1 tray too many',
      isTrouble: true,
      nothing: 'Nothing is proofing',
    })
  })

  it.each([
    ['a load in the oven', { loaded: [loadOf({ loadedAt: at('11:50') }, lines('sesame', 36))] }],
    ['a load planned soon', { planned: [planned({ inAt: at('12:10') })] }],
  ] as const)('[D105] given %s, then the line has the middle', (_what, parts) => {
    expect(wall([RESTING], parts).body.kind).toBe('line')
  })

  it('[D105] given mixes for this evening only, then the wall does not turn to the dough room yet', () => {
    expect(wall([{ ...NEXT, startAtMs: at('18:00') }]).body.kind).not.toBe('dough')
  })

  it('[D106] given a quiet line, then the bar leads to the dough room, late ones too', () => {
    const { bar } = wall([RESTING, MIXING])
    expect(bar.lines).toEqual([{ strong: 'Rest over: Plain', rest: 'now' }])
    expect(bar.after).toBe('then mix-ins into Cinnamon')
    expect(wall([RESTING], {}, at('12:40')).bar).toMatchObject({ state: 'late' })
  })

  it('[D106] given a flip within two minutes, then it stands before a rest that is over; one further ahead after it', () => {
    const soon = { loads: [load({ loadedAt: at('11:57'), flip: until('12:00:30', '12:01', '12:02'), out: null })] }
    const far = { loads: [load({ loadedAt: at('11:57'), flip: until('12:02', '12:03', '12:04'), out: null })] }
    expect(wall([RESTING], soon).bar.lines[0]?.strong).toBe('Flip 1')
    expect(wall([RESTING], soon).bar.after).toBe('then rest over: Plain')
    expect(wall([RESTING], far).bar.lines[0]?.strong).toBe('Rest over: Plain')
  })

  it('[D107] given the calls of the dough room, then each has a figure of its own, unlike those of the line', () => {
    const all: readonly Sounding[] = [
      ...(['pull', 'dip', 'lift', 'board', 'load', 'flip', 'out'] as const),
      ...(['mixIns', 'mixerOff', 'restOver', 'fold', 'chill'] as const),
    ]
    const rhythm = (act: Sounding) =>
      figureOf(act, false)
        .map(({ fromMs, lengthMs }) => `${fromMs}+${lengthMs}`)
        .join(' ')
    const turns = (act: Sounding) =>
      figureOf(act, false)
        .map(({ hz }) => hz)
        .join(' ')
    expect(new Set(all.map(rhythm)).size).toBe(all.length)
    expect(new Set(all.map(turns)).size).toBe(all.length)
  })

  it('[D107] given a rest that is over and a mix to begin, then the rest sounds until somebody says coming', () => {
    const { room } = wall([RESTING, { ...NEXT, startAtMs: at('11:59') }])
    expect(room.filter((act) => roomSound(act) !== null).map(({ key }) => key)).toEqual(['restOver:m1'])
    expect(soundingRoomAct(room, new Map(), NOW)?.key).toBe('restOver:m1')
    expect(soundingRoomAct(room, new Map([['restOver:m1', at('12:01')]]), NOW)).toBeNull()
  })

  it('[D107] given acts of the dough room only, then no pedal does anything', () => {
    const view = wall([RESTING, MIXING])
    const state = stateOf([RESTING, MIXING])
    for (const { id } of ALL_STATIONS)
      expect(pedalAct(id, state, { acts: view.acts, onShow: new Set(view.onShow) })).toBeNull()
    expect(view.acts.filter(isWorthASound)).toEqual([])
  })

  it.each(['en', 'es'] as const)(
    '[D108] given a dozen mixes with the longest names in %s, then what has no room is counted and no row is too wide',
    (language: Language) => {
      const name = 'Sun-dried Tomato & Basil'
      const mixes = Array.from({ length: 12 }, (_, n) =>
        mix(n < 4 ? 'bulk' : 'planned', at('11:00'), {
          id: `m${n}`,
          startAtMs: at('12:05'),
          formula: formula({
            id: `f${n}`,
            name,
            bulk: {
              window: { earliestMs: spanMs(1, 'h'), targetMs: spanMs(2, 'h'), latestMs: spanMs(3, 'h'), unit: 'h' },
              foldsMs: [],
              chill: null,
            },
          }),
        }),
      )
      const shop = { ...SHOP, profile: { ...SHOP.profile, language } }
      const { mixes: column } = doughOf(wall(mixes, { shop }).body)
      expect(column.set.rows.length).toBeGreaterThan(0)
      expect(Number.parseInt(column.note, 10) + column.set.rows.length).toBe(12)
      expect(column.set.rows.length * column.set.rowPx).toBeLessThan(PANEL.heightPx / 2)
      for (const { what, when, form, ringPx } of column.set.rows) {
        const textPx =
          form === 'tall'
            ? Math.max(widthOf(what, SIZES.actPx, 'strong'), widthOf(when, SIZES.actPx))
            : widthOf(`${what} `, SIZES.actPx, 'strong') + widthOf(when, SIZES.actPx)
        expect(textPx + ringPx).toBeLessThanOrEqual(column.box.width)
      }
    },
  )
})

describe('a row beside the time', () => {
  it('given room for none of the doughs, then the stage stands alone; for one, then it says how many more', () => {
    const row = { lines: ['127 Plain', '72 Mini'], note: 'mixing' }
    const told = (widest: string) =>
      contentsText(row, { roomPx: widthOf(widest, 40), fontPx: 40 }, (count) => `${count} more`)
    expect(told('mixing, 2 more')).toBe('mixing')
    expect(told('mixing, 127 Plain, 1 more')).toBe('mixing, 127 Plain, 1 more')
  })
})
