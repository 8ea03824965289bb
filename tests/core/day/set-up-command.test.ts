import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import '../../fixed-seed.ts'
import { parseCommand } from '../../../shared-core/day/command-schema.ts'
import { setUpChanges } from '../../../shared-core/shop/set-up-diff.ts'
import { anyShop } from '../shop/shop-maker.ts'
import { stateWith } from '../support/make.ts'
import { decided, outcome } from '../support/play.ts'

const HEAD = { id: 'setup00001', deviceSeq: 1, tappedAtMs: null }
const problemsOf = (change: object) => {
  const parsed = parseCommand({ ...HEAD, type: 'changeSetUp', changes: [change] })
  return parsed.ok ? [] : parsed.problems
}
const STEP = { id: 'a', name: 'A', order: 0, list: 'opening', offsetMs: 0, kind: 'plain', retired: false }
const HOURS = {
  ovenReadyMinute: 270,
  openMinute: 360,
  changeoverFromMinute: null,
  changeoverToMinute: null,
  closeMinute: 900,
  secondMenu: null,
}
const lb = (thousandths: number) => ({ thousandths, unit: 'lb' })

describe('a set-up in commands', () => {
  it('[U3] given any shop whose parts fit, when it comes as a command, then it is read as it is, and taken', () => {
    fc.assert(
      fc.property(anyShop, (shop) => {
        const act = { type: 'changeSetUp', changes: setUpChanges(null, shop) } as const
        expect(parseCommand(JSON.parse(JSON.stringify({ ...HEAD, ...act })))).toEqual({
          ok: true,
          command: { ...HEAD, ...act },
        })
        expect(outcome(decided(stateWith({ shop: null, day: null }), act))).toBe('taken')
      }),
      { numRuns: 50 },
    )
  })

  it.each([
    [
      {
        entity: 'topping',
        value: { id: 'a', name: 'A', order: 0, contains: ['egg', 'egg'], madeOf: [], retired: false },
      },
      '/contains',
      '"egg" is named twice.',
    ],
    [
      { entity: 'step', value: { ...STEP, list: 'changeover', kind: 'float-test' } },
      '/kind',
      'A float test in the changeover.',
    ],
    [{ entity: 'step', value: { ...STEP, offsetMs: -86_400_001 } }, '/offsetMs', '"offsetMs" is -86400001.'],
    [
      { entity: 'mixer', value: { name: 'Mixer', washMs: 0, leastFlour: lb(2), mostFlour: lb(1) } },
      '/leastFlour',
      'The least flour is 0.002 lb, more than the most.',
    ],
    [{ entity: 'weekday', value: { id: '8', hours: null, retired: false } }, '/id', '"id" is the text "8".'],
    [
      { entity: 'weekday', value: { id: '7', hours: { ...HOURS, closeMinute: 300 }, retired: false } },
      '/closeMinute',
      'The shop closes at 05:00, not after opening.',
    ],
    [
      { entity: 'counter', value: { salesFrom: 'taps', sweepEveryMs: 1, dayOldPercent: 50 } },
      '/sweepEveryMs',
      '"sweepEveryMs" is 1.',
    ],
    [
      { entity: 'person', value: { id: 'a', name: 'A name that is too long', order: 0, retired: false } },
      '/name',
      '"name" has 23 characters.',
    ],
  ])('[U3] %j is refused at %s', (change, at, wrong) => {
    expect(problemsOf(change)).toEqual([{ path: `/changes/0/value${at}`, wrong, right: expect.stringMatching(/\.$/) }])
  })

  it.each([
    [{ entity: 'mixer', value: null }],
    [{ entity: 'cooler', value: null }],
    [{ entity: 'weekday', value: { id: '7', hours: null, retired: false } }],
    [{ entity: 'step', value: STEP }],
  ])('[U3] %j is read', (change) => {
    expect(problemsOf(change)).toEqual([])
  })
})
