import { describe, expect, it } from 'vitest'
import { applyEntry } from '../../../shared-core/day/apply.ts'
import { forkState } from '../../../shared-core/day/state-json.ts'
import { batchId, commandId, doughId, loadId, shelfId, varietyId } from '../../../shared-core/ids.ts'
import { learntTimes } from '../../../shared-core/line/learnt-times.ts'
import type { LineDay, LoadDone } from '../../../shared-core/line/line-tally.ts'
import { LineTally } from '../../../shared-core/line/line-tally.ts'
import { takenOver } from '../../../shared-core/line/take-over.ts'
import { durationMs } from '../../../shared-core/units.ts'
import { at, batch, lines, stateWith } from '../support/make.ts'
import type { Recording } from '../support/record.ts'
import { record } from '../support/record.ts'
import { shopWith } from '../support/shop.ts'

function lineOf(day: Pick<Recording, 'start' | 'entries'>): LineDay {
  const state = forkState(day.start)
  const tally = new LineTally()
  for (const entry of day.entries) {
    tally.before(state, entry)
    applyEntry(state, entry)
  }
  return tally.day()
}

function opened(): Recording {
  const dough = batch({ id: 'dough', stage: 'rack', pieces: 120, since: at('4:00') })
  const day = record(stateWith({ shop: shopWith(), day: null, batches: [dough] }))
  day.at('5:00', { type: 'openDay' })
  return day
}

function onlyOf(day: Recording, stage: 'kettle' | 'boards') {
  const found = [...day.state.batches.values()].filter((one) => one.stage === stage)
  return found.at(-1)?.id ?? batchId('none')
}

describe('what taps say of the times', () => {
  it('[I87] given dips, lifts, a load, a flip and an out that were tapped, when the day is looked at, then their spans are known', () => {
    const day = opened()
    const dip = { type: 'dip', doughId: doughId('plain'), varietyId: null, pieces: 24 } as const
    day.at('5:10', dip)
    day.at('5:11', { type: 'lift', batchId: onlyOf(day, 'kettle') })
    day.at('5:12', dip)
    day.at('5:13', { type: 'lift', batchId: onlyOf(day, 'kettle') })
    day.at('5:15', { type: 'load', shelfId: shelfId('s1'), plannedId: null, lines: lines('sesame', 24, 'poppy', 12) })
    const [load] = [...day.state.loads.values()]
    const id = load?.id ?? loadId('none')
    day.at('5:19', { type: 'flip', loadId: id })
    day.at('5:33', { type: 'out', loadId: id, from: 'second-side', lines: null })
    day.bake('5:35', '5:52', lines('sesame', 12))
    const line = lineOf(day)
    expect(line.boils).toEqual([60, 60])
    expect(line.cycles).toEqual([120])
    // The twelve that the first load left lay on boards until the second.
    expect(line.boardings).toEqual([240, 1_320])
    expect(line.between).toEqual([120])
    expect(line.loads).toEqual([
      {
        shelfId: 's1',
        loadedAtMs: at('5:15'),
        firstSide: 240,
        bake: 1_080,
        varietyIds: [varietyId('poppy'), varietyId('sesame')],
      },
      { shelfId: 's1', loadedAtMs: at('5:35'), firstSide: null, bake: 1_020, varietyIds: [varietyId('sesame')] },
    ])
  })

  it('[I88] given a load that presumes all before it, and an out that presumes the flip, when the day is looked at, then only what was tapped is known', () => {
    const day = opened()
    day.bake('5:15', '5:33', lines('sesame', 24))
    const line = lineOf(day)
    expect([line.boils, line.cycles, line.boardings]).toEqual([[], [], []])
    expect(line.loads.map(({ firstSide, bake }) => [firstSide, bake])).toEqual([[null, 1_080]])
  })

  it('[I88] given an out that was taken back, when the day is looked at, then it teaches nothing; readings stay', () => {
    const day = opened()
    day.bake('5:15', '5:33', lines('sesame', 24))
    const out = day.entries.at(-1)?.commandId ?? commandId('none')
    day.at('5:34', { type: 'takeBack', commandId: out })
    day.at('5:35', { type: 'readOven', shelfId: null, degrees: 480, unit: 'F' })
    const line = lineOf(day)
    expect(line.loads.map(({ bake }) => bake)).toEqual([null])
    expect(line.readings.map(({ milliCelsius }) => milliCelsius)).toEqual([248_889])
  })
})

describe('times that were learnt', () => {
  const bakes = (varieties: readonly string[], ...seconds: readonly number[]): readonly LoadDone[] =>
    seconds.map((bake, n) => ({
      shelfId: shelfId('s1'),
      loadedAtMs: at('5:00'),
      firstSide: n % 2 === 0 ? 220 : null,
      bake,
      varietyIds: varieties.map(varietyId),
    }))
  const dayWith = (part: Partial<LineDay>): LineDay => ({
    ...{ date: '2026-11-24', boils: [], cycles: [], boardings: [], between: [], loads: [], readings: [] },
    ...part,
  })

  it('[I89] given twenty cycles, one of them while somebody was at the door, when learnt, then the median is theirs and the set-up is another', () => {
    const cycles = [...Array.from({ length: 19 }, (_, n) => 95 + (n % 5)), 540]
    const [cycle] = learntTimes(shopWith(), [dayWith({ cycles })])
    expect(cycle).toMatchObject({ what: 'cycle', varietyId: null, taps: 20, days: 1, isOther: true })
    expect(cycle?.medianMs).toBe(97_000)
  })

  it('[I89] given a hundred cycles that are surely two seconds longer, when learnt, then it is no other time', () => {
    const shop = shopWith()
    const cycles = Array.from({ length: 100 }, () => shop.kettle.cycleMs / 1_000 + 2)
    expect(learntTimes(shop, [dayWith({ cycles })])[0]?.isOther).toBe(false)
  })

  it('[I89] given fewer than eight taps, when learnt, then nothing is said', () => {
    expect(learntTimes(shopWith(), [dayWith({ cycles: [90, 90, 90, 90, 90, 90, 90] })])).toEqual([])
  })

  it('[I90] given loads of one variety beside a slower one, when learnt, then only loads in which it is the slowest teach of it', () => {
    const shop = shopWith()
    const own = bakes(['sesame'], 960, 970, 980, 990, 1_000, 1_010, 1_020, 1_030)
    const learnt = learntTimes(shop, [dayWith({ loads: own }), dayWith({ loads: own })])
    const bake = learnt.find(({ what, varietyId: id }) => what === 'bake' && id === 'sesame')
    expect(bake).toMatchObject({ taps: 16, days: 2, medianMs: 995_000 })
    expect(learnt.find(({ what, varietyId: id }) => what === 'firstSide' && id === 'sesame')?.taps).toBe(8)
    expect(learnt.some(({ varietyId: id }) => id === 'poppy')).toBe(false)
  })
})

describe('a learnt time taken over', () => {
  const time = {
    varietyId: null,
    taps: 20,
    days: 2,
    quarterMs: durationMs(90_000),
    threeQuartersMs: durationMs(99_000),
    isOther: true,
  } as const

  it('[I89] given a cycle, when taken over, then the kettle has it and nothing else changes; the same again is no change', () => {
    const shop = shopWith()
    const learnt = { ...time, what: 'cycle', medianMs: durationMs(97_400), setUpMs: shop.kettle.cycleMs } as const
    expect(takenOver(shop, learnt)).toEqual({ entity: 'kettle', value: { ...shop.kettle, cycleMs: 97_000 } })
    expect(takenOver({ ...shop, kettle: { ...shop.kettle, cycleMs: durationMs(97_000) } }, learnt)).toBeNull()
  })

  it('[I89] given a bake longer than its latest, when taken over, then that moves with it, to half a minute', () => {
    const shop = shopWith()
    const learnt = {
      ...time,
      what: 'bake',
      varietyId: varietyId('sesame'),
      medianMs: durationMs(1_900_000),
      setUpMs: null,
    } as const
    const change = takenOver(shop, learnt)
    expect(change?.entity).toBe('variety')
    if (change?.entity === 'variety')
      expect(change.value.windows.bake).toMatchObject({ targetMs: 1_890_000, latestMs: 1_890_000 })
  })
})
