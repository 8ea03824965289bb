import { describe, expect, it } from 'vitest'
import { doughId, toppingId, varietyId, weekdayId } from '../../../shared-core/ids.ts'
import { fullFile, problemsOfFile, shopOf, withValue } from './set-up-file-maker.ts'

describe('a set-up file that says every part', () => {
  it('[U1] given all that a file can say of a day and its equipment, then the shop holds it', () => {
    const shop = shopOf(fullFile())
    expect(shop.kettle).toMatchObject({
      recoverMs: 420_000,
      care: { topUp: 300, malt: 600, skim: null, change: 3_000 },
    })
    expect(shop.oven).toMatchObject({ bakeAt: { degrees: 475, unit: 'F' }, secondAt: { degrees: 290, unit: 'C' } })
    expect(shop.mixer).toEqual({
      name: 'Mixer',
      washMs: 600_000,
      leastFlour: { thousandths: 5_500, unit: 'kg' },
      mostFlour: { thousandths: 50_000, unit: 'lb' },
    })
    expect(shop.cooler).toEqual({ trays: 40, keepsAt: { degrees: 4, unit: 'C' } })
    expect(shop.counter).toEqual({ salesFrom: 'till', sweepEveryMs: 7_200_000, dayOldPercent: 40 })
    expect(shop.toppings.get(toppingId('sesame'))).toEqual({
      id: 'sesame',
      name: 'Sesame',
      order: 0,
      contains: ['sesame'],
      madeOf: [],
      retired: false,
    })
    expect(shop.varieties.get(varietyId('sesame'))?.toppingId).toBe('sesame')
    expect(shop.doughs.get(doughId('plain'))?.contains).toEqual(['wheat', 'egg'])
    expect([...shop.people.values()]).toEqual([{ id: 'ana', name: 'Ana', order: 0, retired: false }])
    expect([...shop.steps.values()].map(({ id, list, offsetMs, kind }) => [id, list, offsetMs, kind])).toEqual([
      ['oven', 'opening', -90 * 60_000, 'plain'],
      ['float', 'opening', -90_000, 'float-test'],
      ['empty', 'changeover', 0, 'plain'],
      ['stones', 'changeover', 5 * 60_000, 'plain'],
    ])
    expect(shop.weekdays.get(weekdayId('7'))).toEqual({ id: '7', hours: null, retired: false })
    expect(shop.weekdays.get(weekdayId('6'))?.hours).toMatchObject({ openMinute: 420, changeoverFromMinute: null })
  })
})

describe('a mistake in a part of a set-up file is told with its place, what is wrong and what would be right', () => {
  const ALLERGEN = '"milk", "egg", "fish", "shellfish", "treeNuts", "peanuts", "wheat", "soy" or "sesame".'
  const HOURS = 'An object with "ovenReady", "open", "changeover", "close", "secondMenu".'
  it.each([
    [
      { amount: 60, unit: 'lb' },
      '/mixer/leastFlour',
      '',
      'The least flour is 60 lb, more than the most.',
      'At most 50 lb.',
    ],
    [
      { amount: 0, unit: 'lb' },
      '/mixer/leastFlour',
      '/mixer/leastFlour/amount',
      '"amount" is 0.',
      'A number from 0.001 to 1000000.',
    ],
    ['cups', '/mixer/mostFlour/unit', '', '"unit" is the text "cups".', '"g", "kg", "oz" or "lb".'],
    [undefined, '/mixer/mostFlour', '', '"mostFlour" is missing.', 'An object with "amount", "unit".'],
    [0, '/cooler/trays', '', '"trays" is 0.', 'A whole number from 1 to 2000.'],
    [38.5, '/cooler/keepsAt/degrees', '', '"degrees" is 38.5.', 'A whole number from -60 to 1200.'],
    ['guess', '/counter/salesFrom', '', '"salesFrom" is the text "guess".', '"taps", "till" or "sweeps".'],
    [
      { minutes: 5 },
      '/counter/sweepEvery',
      '',
      'It is 300 s.',
      '{ "seconds": … } or { "minutes": … }, from 600 s to 43200 s.',
    ],
    [101, '/counter/dayOldPercent', '', '"dayOldPercent" is 101.', 'A whole number from 0 to 100.'],
    [0, '/kettle/care/malt', '', '"malt" is 0.', 'A whole number from 1 to 50000.'],
    ['hot', '/oven/bakeAt', '', '"bakeAt" is the text "hot".', 'An object with "degrees", "unit".'],
    ['gluten', '/doughs/0/contains/0', '', 'Entry 1 is the text "gluten".', ALLERGEN],
    ['wheat', '/doughs/0/contains/1', '/doughs/0/contains', '"wheat" is named twice.', 'Each allergen once.'],
    [['milk', 'milk'], '/toppings/0/contains', '', '"milk" is named twice.', 'Each allergen once.'],
    ['gold', '/varieties/1/toppedWith', '', 'There is no topping "gold".', 'The id of a topping: "sesame", "old".'],
    [
      'old',
      '/varieties/1/toppedWith',
      '',
      'Its topping "old" is retired.',
      'A topping in use, or the variety retired too.',
    ],
    [
      'none',
      '/varieties/1/topping',
      '/varieties/1/toppedWith',
      'Topped with "sesame", and "topping" says "none".',
      'No topping, or when it goes on.',
    ],
    [
      'x'.repeat(17),
      '/people/0/name',
      '',
      '"name" has 17 characters.',
      'A name of 1 to 16 characters in one line, without spaces at its ends.',
    ],
    ['ana', '/people/1', '', 'Entry 2 is the text "ana".', 'An object with "id", "name", "retired".'],
    [
      { id: 'b', name: 'ANA' },
      '/people/1',
      '/people/1/name',
      'Two people in use are called "ANA".',
      'A name of its own, or "ana" retired.',
    ],
    ['closing', '/steps/0/list', '', '"list" is the text "closing".', '"opening" or "changeover".'],
    [1_441, '/steps/0/before/minutes', '', '"minutes" is 1441.', 'A number from 0 to 1440.'],
    [{ minutes: 1 }, '/steps/0/after', '', 'Both "before" and "after" are given.', 'One of the two, or neither.'],
    ['float-test', '/steps/3/kind', '', 'A float test in the changeover.', '"plain", or the list "opening".'],
    [
      'Float',
      '/steps/0/name',
      '/steps/1/name',
      'Two steps in use are called "Float".',
      'A name of its own, or "oven" retired.',
    ],
    ['05:00', '/weekdays/saturday/close', '', 'The shop closes at 05:00, not after opening.', 'After 07:00.'],
    [
      { from: '06:00', to: '08:00' },
      '/weekdays/saturday/changeover',
      '/weekdays/saturday/changeover/from',
      'The changeover begins at 06:00, when the shop is closed.',
      'From 07:00 to 14:00.',
    ],
    ['closed', '/weekdays/sunday', '', '"sunday" is the text "closed".', HOURS],
    [null, '/weekdays/caturday', '', '"caturday" is not a key that is known here.', '"saturday".'],
  ])('[U3] %j at %s', (value, at, told, wrong, right) => {
    const problems = problemsOfFile(withValue(fullFile(), at, value))
    expect(problems).toEqual([{ path: told === '' ? at : told, wrong, right }])
  })

  it('[U3] two steps of one name may stand in two lists', () => {
    expect(problemsOfFile(withValue(fullFile(), '/steps/3/name', 'Oven'))).toEqual([])
  })
})
