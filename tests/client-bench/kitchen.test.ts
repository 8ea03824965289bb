import { describe, expect, it } from 'vitest'
import { kitchenLayout } from '../../client/bench/kitchen/kitchen-layout.ts'
import { nextActs, nextView } from '../../client/bench/kitchen/next-view.ts'
import { ovenGroups, shelfChoices } from '../../client/bench/kitchen/oven-view.ts'
import { rodHead } from '../../client/bench/kitchen/rod-head.ts'
import { rodViews } from '../../client/bench/kitchen/rods-view.ts'
import { sheetRoom } from '../../client/bench/sheet.tsx'
import { pullsText } from '../../client/bench/sheets/pulls-text.ts'
import { shiftKeyView } from '../../client/bench/shift-key.ts'
import { actsAt, kitchenCommand } from '../../client/parts/kitchen-calls.ts'
import { kitchenLook } from '../../client/parts/kitchen-now.ts'
import { kitchenRoomWords } from '../../client/words/bench-kitchen.ts'
import { rulerOf } from '../../shared-core/day/ruler.ts'
import { kitchenStationId, menuItemId, varietyId } from '../../shared-core/ids.ts'
import type { Language } from '../../shared-core/shop/shop.ts'
import { Afternoon } from '../core/support/kitchen-play.ts'
import { at, minuteToMs } from '../core/support/make.ts'
import { wordsOf } from './support.ts'

const SANDWICHES = kitchenStationId('sandwiches')
const OVEN = kitchenStationId('oven')

function seen({ state }: Afternoon, clock: string, stations: readonly (typeof OVEN)[] = [], language: Language = 'en') {
  const { shop } = state
  if (shop === null) throw new Error('a shop')
  const nowMs = at(clock)
  const words = kitchenRoomWords(wordsOf(shop, language))
  const look = kitchenLook(state, nowMs, rulerOf(state, nowMs, minuteToMs))
  const noteOf = ({ id }: { readonly id: string }) => (id.startsWith('none') ? '' : 'cut in eight')
  return { state, shop, nowMs, words, queue: look.queue, acts: actsAt(look.acts, nowMs), stations, noteOf }
}

const LOX = { itemId: menuItemId('lox'), varietyId: varietyId('sesame') }
const MELT = { itemId: menuItemId('melt'), varietyId: varietyId('poppy') }

describe('[M141] the rods of the kitchen', () => {
  it('given the same thing in several orders, then it is one rod with a ring for each by due time, and its total at the end', () => {
    const day = new Afternoon().slip('12:30', '41', 'flatbread', 'coffee').slip('12:31', '42', 'flatbread')
    const rods = rodViews(seen(day, '12:32'))
    expect(rods.map(({ name, rings }) => [name, rings.map(({ mark }) => mark)])).toEqual([
      ['Coffee', ['41']],
      ['Flatbread', ['41', '42']],
    ])
    expect(rods[1]?.rings.map(({ dueAtMs }) => dueAtMs)).toEqual([day.due('41'), day.due('42')])
  })

  it('given an allergy, then that item is on a rod of its own, before all others, with the words and its own shape', () => {
    const day = new Afternoon()
      .slip('12:30', '41', 'melt on poppy')
      .slip('12:31', '42', { ...MELT, allergies: ['milk', 'egg'] })
    const [first, second] = rodViews(seen(day, '12:32'))
    expect([first?.allergy, first?.rings.map((ring) => [ring.mark, ring.isAllergy])]).toEqual([
      'ALLERGY: milk, egg',
      [['42', true]],
    ])
    expect([second?.allergy, second?.rings.map((ring) => [ring.mark, ring.isAllergy])]).toEqual(['', [['41', false]]])
    expect(rodViews(seen(day, '12:32', [], 'es'))[0]?.allergy).toBe('ALERGIA: leche, huevo')
  })

  it('given an item that passes two stations, then it has one ring; at the second alone it says where it still is', () => {
    const day = new Afternoon().slip('12:30', '41', 'flatbread')
    expect(rodViews(seen(day, '12:31', [SANDWICHES, OVEN]))[0]?.rings.map(({ stage }) => stage)).toEqual(['next'])
    const [rod] = rodViews(seen(day, '12:31', [OVEN]))
    expect(rod?.rings.map(({ stage, told }) => [stage, told])).toEqual([['away', 'still at Sandwiches']])
    day.move('12:31', 'made', [['41', 1, 0]])
    expect(rodViews(seen(day, '12:32', [OVEN]))[0]?.rings[0]).toMatchObject({ stage: 'next', isOven: true, slots: 1 })
  })

  it.each([
    // now, ring, in words
    ['12:30', 'act', /^41: now$/],
    ['12:38:01', 'late', /late$/],
  ])('given one that nobody has begun, when it is %s, then its ring is %s', (clock, state, told) => {
    const day = new Afternoon().slip('12:30', '41', 'lox on sesame')
    const [rod] = rodViews(seen(day, clock))
    expect(rod?.rings[0]?.ring.state).toBe(state)
    expect(rod?.told).toMatch(told)
  })

  it('given more than there are hands, then those that must wait are drawn hollow, with when they are to be begun', () => {
    const day = new Afternoon().slip('12:30', '41', { ...LOX, times: 3 })
    const rings = rodViews(seen(day, '12:30'))[0]?.rings ?? []
    expect(rings.map(({ ring, told }) => [ring.state, told])).toEqual([
      ['act', 'now'],
      ['act', 'now'],
      ['idle', 'in 60 s'],
    ])
  })

  it('given one that is begun, then its ring empties and says so; over its time it calls', () => {
    const day = new Afternoon().slip('12:30', '41', 'lox on sesame').move('12:31', 'begun', [['41', 1, 0]])
    const ring = (clock: string) => rodViews(seen(day, clock))[0]?.rings[0]
    expect(ring('12:31:30')).toMatchObject({ stage: 'begun', ring: { fraction: 0.5, state: 'running' } })
    expect(ring('12:31:30')?.told).toBe('begun, 30 s left')
    expect(ring('12:32:10')).toMatchObject({ ring: { state: 'act' }, told: 'begun, 10 s over' })
  })
})

describe('[M141] the words above a rod', () => {
  const rod = { allergy: '', name: 'Lox on Sesame, toasted, no Cheese', told: '41: now' }
  const nine = 'ALLERGY: milk, egg, fish, shellfish, tree nuts, peanuts, wheat, soy, sesame'
  const glass = (widthPx: number, isNarrow = false) => ({ spanPx: widthPx, totalPx: 0, isNarrow })

  it.each([
    ['all of it', 700, rod, rod],
    ['without how it stands', 440, rod, { ...rod, told: '' }],
    ['what is left out counted', 320, rod, { ...rod, name: 'Lox on Sesame, +2', told: '' }],
    ['cut where not even its first words fit', 150, rod, { ...rod, name: 'Lox on …', told: '' }],
    ['an allergy whole', 1_180, { ...rod, allergy: nine }, { allergy: nine, name: 'Lox on Sesame, +2', told: '' }],
  ])('%s in one line of %i px', (_what, widthPx, given, row) => {
    expect(rodHead(given, glass(widthPx), 25)).toEqual([row])
  })

  it('on a telephone an allergy takes the lines that it needs, and no word of it is lost', () => {
    const rows = rodHead({ ...rod, allergy: nine }, glass(356, true), 25)
    expect(
      rows
        .map(({ allergy }) => allergy)
        .join(' ')
        .trim(),
    ).toBe(nine)
    expect(
      rows
        .map(({ name }) => name)
        .join(' ')
        .trim(),
    ).toBe(rod.name)
  })
})

describe('[M143] what is next in the kitchen', () => {
  it('given orders, when their first parts are due, then their keys begin them; what is begun by hand is to be finished', () => {
    const day = new Afternoon().slip('12:30', '41', 'lox on sesame').move('12:31', 'begun', [['41', 1, 0]])
    day.slip('12:31', '42', 'coffee')
    const parts = seen(day, '12:32:30')
    const acts = nextActs(parts)
    expect(acts.map(({ act, marks }) => `${act} ${marks.join(' ')}`)).toEqual(
      expect.arrayContaining(['made 41', 'make 42']),
    )
    const finish = acts.find(({ act }) => act === 'made')
    if (finish === undefined) throw new Error('nothing to finish')
    expect(kitchenCommand(finish)).toMatchObject({ to: 'made', parts: [day.part('41', 1, 0)] })
    expect(nextView(finish, parts)).toMatchObject({
      whats: ['Finish Lox on Sesame: 41', 'Finish: 41'],
      notes: ['41: cut in eight'],
    })
  })

  it('given what burns, then it stands before what somebody would begin now', () => {
    const day = new Afternoon()
      .slip('12:30', '41', 'flatbread')
      .slip('12:30', '42', 'coffee')
      .move('12:31', 'begun', [['41', 1, 1]], 's1')
    const acts = nextActs(seen(day, '12:32:55'))
    expect(acts.map(({ act, status }) => [act, status])).toEqual([
      ['turn', 'coming'],
      ['make', 'due'],
    ])
  })

  it('given a screen for one station, then other stations’ acts are not its own, and handing over is anybody’s', () => {
    const day = new Afternoon().slip('12:30', '41', 'coffee').slip('12:30', '42', 'lox on sesame')
    const stationsOf = (clock: string) => nextActs(seen(day, clock, [SANDWICHES])).map(({ stationId }) => stationId)
    expect(stationsOf('12:37')).toEqual([SANDWICHES])
    day.move('12:37', 'made', [['41', 1, 0]])
    expect(nextActs(seen(day, '12:38', [SANDWICHES])).map(({ act }) => act)).toContain('handOver')
  })

  it('given an allergy, then the key says so before all else', () => {
    const day = new Afternoon().slip('12:30', '41', { ...MELT, allergies: ['milk'] })
    const parts = seen(day, '12:37')
    const [first] = nextActs(parts)
    if (first === undefined) throw new Error('nothing next')
    expect(nextView(first, parts).allergy).toBe('ALLERGY: milk')
  })
})

describe('[M144] the oven’s places', () => {
  it('given two that went in together, then they are one ring; a turn is a notch on it, and is done before they come out', () => {
    const day = new Afternoon()
      .slip('12:30', '41', 'flatbread')
      .slip('12:30', '42', 'flatbread')
      .move(
        '12:31',
        'begun',
        [
          ['41', 1, 1],
          ['42', 1, 1],
        ],
        's1',
      )
    const [group, ...others] = ovenGroups(seen(day, '12:32'))
    expect(others).toEqual([])
    expect(group).toMatchObject({
      marked: '41, 42',
      items: '2 Flatbread',
      what: 'Turn 1',
      when: 'in 60 s',
      tone: 'plain',
    })
    expect(group?.ring).toMatchObject({ fraction: 0.75, state: 'running', turns: [{ fraction: 0.5, isDone: false }] })
    day.move('12:33', 'turned', [
      ['41', 1, 1],
      ['42', 1, 1],
    ])
    const [turned] = ovenGroups(seen(day, '12:35:31'))
    expect(turned).toMatchObject({ what: 'Out of 1', tone: 'late', ring: { state: 'late', turns: [{ isDone: true }] } })
    expect(turned?.act).toMatchObject({ type: 'moveItems', to: 'made' })
  })

  it('given one with an allergy among them, then it has a ring of its own', () => {
    const day = new Afternoon()
      .slip('12:30', '41', 'flatbread')
      .slip('12:30', '42', { allergies: ['soy'] })
      .move(
        '12:31',
        'begun',
        [
          ['41', 1, 1],
          ['42', 1, 1],
        ],
        's1',
      )
    expect(ovenGroups(seen(day, '12:32')).map(({ marks, isAllergy }) => [...marks, isAllergy])).toEqual([
      ['41', false],
      ['42', true],
    ])
    expect(ovenGroups(seen(day, '12:32'))[1]?.allergy).toBe('ALLERGY')
  })

  it('given several at different times, then what is to be touched soonest stands first', () => {
    const day = new Afternoon().slip('12:30', '41', 'melt on poppy').slip('12:30', '42', 'flatbread')
    day.move('12:31', 'begun', [['41', 1, 1]], 's1').move('12:31:20', 'begun', [['42', 1, 1]], 's2')
    // The melt is out at 12:33:30, before the flatbread, which is turned at 12:33:20.
    expect(ovenGroups(seen(day, '12:32')).map(({ marked }) => marked)).toEqual(['42', '41'])
  })

  it('given what bakes, then each shelf says how many of its places are free', () => {
    const day = new Afternoon().slip('12:30', '41', 'flatbread', 'long')
    day.move(
      '12:31',
      'begun',
      [
        ['41', 1, 1],
        ['41', 2, 1],
      ],
      's1',
    )
    const { state, shop, nowMs } = seen(day, '12:32')
    expect(shelfChoices(state, shop, nowMs).map(({ name, free }) => [name, free])).toEqual([
      ['1', 1],
      ['2', 4],
      ['3', 2],
    ])
  })
})

describe('[M145] where the kitchen stands', () => {
  const room = sheetRoom(
    { widthPx: 1280, heightPx: 800, screenWidthPx: 1280, screenHeightPx: 800 },
    { keyPx: 118, gapPx: 18, marginPx: 16 },
  )
  it.each([
    // kinds, in the oven, rods, rows of the oven
    [2, 0, 3, 0],
    [9, 0, 3, 0],
    [9, 1, 2, 1],
    [9, 9, 2, 1],
    [1, 9, 1, 2],
  ])(
    'given a ten-inch tablet with %i kinds and %i groups in the oven, then %i rods stand over %i rows of it',
    (kinds, ovenCells, rods, ovenRows) => {
      expect(kitchenLayout({ room, minPx: 25, kinds, ovenCells })).toMatchObject({ rods, ovenRows, isNarrow: false })
    },
  )

  it('given something to make, then the line’s screen has a key that leads there, before lists and after the kettle', () => {
    const day = new Afternoon().slip('12:30', '41', 'lox on sesame')
    const key = (clock: string) => {
      const { state, acts, nowMs, words } = seen(day, clock)
      return shiftKeyView({
        state,
        nowMs,
        roomActs: [],
        kitchenActs: acts,
        ruler: rulerOf(state, nowMs, minuteToMs),
        words,
      })
    }
    expect(key('12:37')).toMatchObject({ what: 'Kitchen', tone: 'act', act: null, sheet: { kind: 'kitchen' } })
    expect(key('12:39')).toMatchObject({ what: 'Kitchen', tone: 'late' })
    expect(shiftKeyView({ ...seen(new Afternoon(), '12:37'), roomActs: [], kitchenActs: [], ruler: null })).toBeNull()
  })
})

describe('[M149] portions that are pulled for the second menu', () => {
  it('given the changeover, when their time comes nearer, then the pull list names them with trays, and then that it is time', () => {
    const day = new Afternoon().count('6:50', 'ball', 30)
    const text = (clock: string, language: Language = 'en') => {
      const { acts, words, nowMs } = seen(day, clock, [], language)
      return pullsText({ plan: null, view: { kitchenActs: acts }, words, nowMs })
    }
    expect(text('7:00')).toBeUndefined()
    expect(text('9:00')).toBe('pull 3 trays Ball at 10:30')
    expect(text('10:31')).toBe('pull 3 trays Ball now')
    expect(text('9:00', 'es')).toBe('traer 3 bandejas Ball a las 10:30')
    day.count('10:32', 'ball', 29)
    expect(text('10:33')).toBeUndefined()
  })
})
