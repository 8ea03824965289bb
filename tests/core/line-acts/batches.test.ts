import { describe, expect, it } from 'vitest'
import type { Act } from '../../../shared-core/day/commands.ts'
import type { State } from '../../../shared-core/day/state.ts'
import { batchId, doughId, varietyId } from '../../../shared-core/ids.ts'
import { at, batch, lines, loadOf, stateWith } from '../support/make.ts'
import { decided, eventsOf, outcome, places, play } from '../support/play.ts'
import { ALL_STATIONS, dough, shopWith, table } from '../support/shop.ts'

const PLAIN = doughId('plain')
const RYE = doughId('rye')
const everyActTapped = () => shopWith({ stations: table(ALL_STATIONS) })

describe('pieces come in', () => {
  it('[T1] given 72 shaped and 48 carried in, then both are in the account', () => {
    const state = stateWith()
    play(state, { type: 'shape', doughId: PLAIN, varietyId: null, pieces: 72, stage: 'proof' })
    play(state, {
      type: 'carryIn',
      doughId: PLAIN,
      varietyId: null,
      pieces: 48,
      stage: 'chill',
      sinceMs: at('18:00', -1),
    })
    expect(state.account.get(PLAIN)).toMatchObject({ shaped: 72, carriedIn: 48 })
    const chilled = [...state.batches.values()].find((one) => one.stage === 'chill')
    expect(chilled).toMatchObject({ sinceMs: at('18:00', -1), until: { targetAtMs: at('8:00') } })
  })

  it('[L12] given trays said to be there since tomorrow, when carried in, then they count from now', () => {
    const state = stateWith()
    play(state, {
      type: 'carryIn',
      doughId: PLAIN,
      varietyId: null,
      pieces: 48,
      stage: 'chill',
      sinceMs: at('6:00', 1),
    })
    expect([...state.batches.values()][0]?.sinceMs).toBe(at('6:47'))
  })
})

describe('pull, dip, lift, board', () => {
  it('[L1] given a whole morning tapped stage by stage, then pieces stand where they were said to be', () => {
    const state = stateWith({ shop: everyActTapped(), batches: [batch({ stage: 'chill', pieces: 48 })] })
    play(state, { type: 'pull', doughId: PLAIN, varietyId: null, pieces: 48 })
    expect(places(state)).toEqual(['rack plain dough 48'])
    play(state, { type: 'dip', doughId: PLAIN, varietyId: null, pieces: 36 })
    expect(places(state)).toEqual(['kettle plain dough 36', 'rack plain dough 12'])
    const [kettle] = [...state.batches.values()].filter((one) => one.stage === 'kettle')
    play(state, { type: 'lift', batchId: kettle?.id ?? batchId('none') })
    play(state, { type: 'board', lines: lines('sesame', 24, 'poppy', 12) })
    expect(places(state)).toEqual(['boards poppy 12', 'boards sesame 24', 'rack plain dough 12'])
    expect(state.unsure.size).toBe(0)
  })

  it('[L11] given a kettle not lifted, when the next dip is tapped, then its lift is presumed', () => {
    const state = stateWith({ shop: everyActTapped(), batches: [batch({ pieces: 72 })] })
    play(state, { type: 'dip', doughId: PLAIN, varietyId: null, pieces: 36 })
    const events = play(state, { type: 'dip', doughId: PLAIN, varietyId: null, pieces: 36 }, { nowMs: at('6:49') })
    expect(eventsOf(events, 'batchMoved')[0]?.presumed).toEqual([{ act: 'lift', doughId: 'plain', pieces: 36 }])
    expect(places(state)).toEqual(['boards plain dough 36', 'kettle plain dough 36'])
  })

  it('[L7] given a kettle of 36, when 40 are dipped cold from the cooler, then taken and recorded', () => {
    const chilled = batch({
      stage: 'chill',
      pieces: 40,
      until: { earliestAtMs: at('8:00'), targetAtMs: at('9:00'), latestAtMs: at('20:00') },
    })
    const state = stateWith({ batches: [chilled] })
    const events = play(state, { type: 'dip', doughId: PLAIN, varietyId: null, pieces: 40 })
    expect(eventsOf(events, 'batchMoved')[0]).toMatchObject({
      over: ['kettle', 'too-early'],
      presumed: [{ act: 'pull' }],
    })
  })

  it('[L3] given nothing known of rye, when 24 are dipped, then they are found', () => {
    const state = stateWith()
    const events = play(state, { type: 'dip', doughId: RYE, varietyId: varietyId('rye'), pieces: 24 })
    expect(eventsOf(events, 'piecesFound')[0]?.batch).toMatchObject({ pieces: 24, varietyId: 'rye' })
    expect(state.account.get(RYE)?.unexplained).toBe(-24)
  })

  it('[L4] given a lifted batch, when lifted again, then already-moved', () => {
    const state = stateWith({ batches: [batch({ stage: 'kettle' })] })
    play(state, { type: 'lift', batchId: batchId('b1') })
    expect(outcome(decided(state, { type: 'lift', batchId: batchId('b1') }))).toBe('already-moved')
  })
})

describe('the same act by two people', () => {
  const stocked = () => stateWith({ batches: [batch({ id: 'cold', stage: 'chill', pieces: 96 })] })
  const acts: readonly Act[] = [
    { type: 'pull', doughId: PLAIN, varietyId: null, pieces: 48 },
    { type: 'dip', doughId: PLAIN, varietyId: null, pieces: 36 },
    { type: 'board', lines: lines('sesame', 36) },
    { type: 'moveBatch', batchId: batchId('cold'), from: 'chill', to: 'rack', pieces: 24 },
    { type: 'wasteBatch', batchId: batchId('cold'), from: 'chill', pieces: 24 },
  ]
  it.each(acts.map((act) => [act.type, act] as const))(
    '[L4] given both screens showed the same, when both tap %s, then it is done once',
    (_type, act) => {
      const state = stocked()
      const seenSeq = state.seq
      play(state, act, { id: 'first00001', device: 'wall', seenSeq })
      expect(outcome(decided(state, act, { id: 'second0001', device: 'bench', seenSeq }))).toBe('already-moved')
    },
  )

  it.each([
    ['the same device taps twice', 'wall', 0],
    ['the second had seen the first', 'bench', 1],
  ] as const)('[L4] given %s, then it is done twice', (_how, device, seen) => {
    const state = stocked()
    const seenSeq = state.seq
    const pull: Act = { type: 'pull', doughId: PLAIN, varietyId: null, pieces: 48 }
    play(state, pull, { id: 'first00001', device: 'wall', seenSeq })
    play(state, pull, { id: 'second0001', device, seenSeq: seenSeq + seen })
    expect(places(state)).toEqual(['rack plain dough 96'])
  })
})

describe('by hand', () => {
  it.each(['proof', 'chill', 'rack', 'kettle', 'boards'] as const)(
    '[L9] given 36 at %s, when 12 go to every other stage, then the batch is split',
    (from) => {
      for (const to of (['proof', 'chill', 'rack', 'kettle', 'boards'] as const).filter((stage) => stage !== from)) {
        const state = stateWith({ batches: [batch({ stage: from })] })
        play(state, { type: 'moveBatch', batchId: batchId('b1'), from, to, pieces: 12 })
        expect(places(state)).toEqual([`${from} plain dough 24`, `${to} plain dough 12`].sort())
      }
    },
  )

  it('[L9] given 36 at any stage or in the oven, when wasted in two steps, then none are left, nor the load', () => {
    for (const stage of ['proof', 'chill', 'rack', 'kettle', 'boards', 'oven'] as const) {
      const loaded = loadOf({ id: 'l1' }, lines('sesame', 36))
      const inOven = stage === 'oven'
      const state = inOven ? stateWith({ loaded: [loaded] }) : stateWith({ batches: [batch({ id: 'l1.0', stage })] })
      play(state, { type: 'wasteBatch', batchId: batchId('l1.0'), from: stage, pieces: 30 })
      expect(state.loads.size).toBe(inOven ? 1 : 0)
      play(state, { type: 'wasteBatch', batchId: batchId('l1.0'), from: stage, pieces: 6 })
      expect(places(state)).toEqual([])
      expect(state.loads.size).toBe(0)
      expect(state.account.get(PLAIN)?.wasted).toBe(36)
    }
  })

  const here = () =>
    stateWith({
      batches: [batch(), batch({ id: 'r1', dough: 'rye', stage: 'chill' })],
      loaded: [loadOf({ id: 'l1' }, lines('sesame', 6))],
    })
  it.each<[string, (state: State) => Act, string]>([
    [
      'a batch that is not there',
      () => ({ type: 'moveBatch', batchId: batchId('no'), from: 'rack', to: 'boards', pieces: 1 }),
      'unknown-batch',
    ],
    [
      'a batch moved meanwhile',
      () => ({ type: 'moveBatch', batchId: batchId('b1'), from: 'chill', to: 'boards', pieces: 1 }),
      'already-moved',
    ],
    [
      'the stage where it is',
      () => ({ type: 'moveBatch', batchId: batchId('b1'), from: 'rack', to: 'rack', pieces: 1 }),
      'same-place',
    ],
    [
      'more than there are',
      () => ({ type: 'moveBatch', batchId: batchId('b1'), from: 'rack', to: 'boards', pieces: 37 }),
      'too-few',
    ],
    [
      'a stage off its route',
      () => ({ type: 'moveBatch', batchId: batchId('r1'), from: 'chill', to: 'rack', pieces: 1 }),
      'not-on-route',
    ],
    [
      'a batch in the oven',
      () => ({ type: 'moveBatch', batchId: batchId('l1.0'), from: 'oven', to: 'rack', pieces: 1 }),
      'not-on-route',
    ],
    [
      'waste of one not there',
      () => ({ type: 'wasteBatch', batchId: batchId('no'), from: 'rack', pieces: 1 }),
      'unknown-batch',
    ],
    [
      'waste of one moved',
      () => ({ type: 'wasteBatch', batchId: batchId('b1'), from: 'chill', pieces: 1 }),
      'already-moved',
    ],
    ['waste of too many', () => ({ type: 'wasteBatch', batchId: batchId('b1'), from: 'rack', pieces: 37 }), 'too-few'],
    ['a pull without a rack', () => ({ type: 'pull', doughId: RYE, varietyId: null, pieces: 6 }), 'not-on-route'],
    [
      'an unknown dough',
      () => ({ type: 'pull', doughId: doughId('oat'), varietyId: null, pieces: 6 }),
      'unknown-dough',
    ],
    [
      'a variety of another dough',
      () => ({ type: 'dip', doughId: PLAIN, varietyId: varietyId('rye'), pieces: 6 }),
      'unknown-variety',
    ],
    ['an unknown variety on boards', () => ({ type: 'board', lines: lines('bialy', 6) }), 'unknown-variety'],
    ['a question nobody asked', () => ({ type: 'confirmPresumed', unsureIds: [] }), 'already-confirmed'],
  ])('[L14] given %s, then %s is refused', (_title, act, code) => {
    const state = here()
    expect(outcome(decided(state, act(state)))).toBe(code)
  })

  it('[L14] given a dough without a kettle, or retired, when dipped, then refused by name', () => {
    const doughs = table([dough({ id: 'focaccia', route: ['proof', 'oven'] }), dough({ id: 'old', retired: true })])
    const state = stateWith({ shop: shopWith({ doughs }) })
    expect(outcome(decided(state, { type: 'dip', doughId: doughId('focaccia'), varietyId: null, pieces: 6 }))).toBe(
      'not-on-route',
    )
    expect(outcome(decided(state, { type: 'dip', doughId: doughId('old'), varietyId: null, pieces: 6 }))).toBe(
      'retired',
    )
  })
})
