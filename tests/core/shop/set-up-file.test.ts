import { Ajv2020 } from 'ajv/dist/2020.js'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import demoFile from '../../../server/demo/demo-set-up.json' with { type: 'json' }
import { doughId, shelfId, varietyId } from '../../../shared-core/ids.ts'
import { DEFAULT_BAKING, DEFAULT_DEMAND } from '../../../shared-core/shop/default-rules.ts'
import { DEFAULT_WINDOWS } from '../../../shared-core/shop/default-windows.ts'
import { PROBLEMS_MAX } from '../../../shared-core/shop/problems.ts'
import { parseSetUpFile, setUpJsonSchema } from '../../../shared-core/shop/set-up-file.ts'
import { bigSetUpFile } from './big-set-up.ts'
import { doughRoomFile } from './formula-file.ts'
import { CHECKS, fullFile, problemsOfFile, shopOf, smallFile, smallHearthFile, withValue } from './set-up-file-maker.ts'

describe('a set-up file', () => {
  it('[U2] given only what it must say, as files of the first release did, then the rest is common practice or not said', () => {
    const shop = shopOf(smallFile())
    expect(shop.profile).toEqual({
      name: 'Test Bagels',
      zone: 'America/Chicago',
      language: 'en',
      temperature: 'F',
      weight: 'lb-oz',
      clock: 12,
    })
    expect(shop.hours).toEqual({
      ovenReadyMinute: 270,
      openMinute: 360,
      changeoverFromMinute: null,
      changeoverToMinute: null,
      closeMinute: 900,
      secondMenu: null,
    })
    expect(shop.kettle).toEqual({
      pieces: 36,
      cycleMs: 90_000,
      recoverMs: 300_000,
      care: { topUp: null, malt: null, skim: null, change: null },
    })
    expect(shop.boards).toEqual({ count: 24, pieces: 6, rewetMs: 300_000 })
    expect(shop.oven).toEqual({ kind: 'shelves', handlingMs: 60_000, bakeAt: null, secondAt: null })
    expect(shop).toMatchObject({ mixer: null, cooler: null })
    expect(shop.counter).toEqual({ salesFrom: 'taps', sweepEveryMs: 90 * 60_000, dayOldPercent: 50 })
    for (const list of ['toppings', 'people', 'steps', 'weekdays', 'specialDays'] as const)
      expect(shop[list].size).toBe(0)
    expect(shop.windows).toEqual(DEFAULT_WINDOWS)
    expect(shop.demand).toEqual(DEFAULT_DEMAND)
    expect(shop.baking).toEqual(DEFAULT_BAKING)
    expect(shop.varieties.get(varietyId('sesame'))).toEqual({
      id: 'sesame',
      name: 'Sesame',
      order: 1,
      doughId: 'plain',
      size: 'regular',
      decidedAt: 'line',
      topping: 'before-flip',
      toppingId: null,
      bakedOn: 'board',
      flip: true,
      windows: {},
      priceCents: 0,
      costCents: 0,
      kitchenCents: null,
      showLeast: 0,
      avoids: [],
      usual: null,
      retired: false,
    })
    expect(shop.doughs.get(doughId('rye'))).toMatchObject({
      order: 1,
      trayPieces: 24,
      contains: [],
      windows: {},
      retired: false,
    })
  })

  it('given a hearth, then its floor is one shelf in boards that holds their pieces', () => {
    const shop = shopOf(smallHearthFile())
    expect([...shop.shelves.values()]).toEqual([
      {
        id: 'floor',
        name: 'Floor',
        order: 0,
        pieces: 120,
        emptyByMinute: null,
        floorBoards: 20,
        slots: 0,
        retired: false,
      },
    ])
    expect(shopOf(withValue(smallHearthFile(), '/oven/floor/pieces', 100)).shelves.get(shelfId('floor'))?.pieces).toBe(
      100,
    )
  })

  it('given a window in minutes with a fraction, then it is whole milliseconds and keeps its unit', () => {
    const shop = shopOf(
      withValue(smallFile(), '/windows', { firstSide: { unit: 'min', earliest: 3, target: 3.55, latest: 4 } }),
    )
    expect(shop.windows.firstSide).toEqual({ earliestMs: 180_000, targetMs: 213_000, latestMs: 240_000, unit: 'min' })
    expect(shop.windows.bake).toEqual(DEFAULT_WINDOWS.bake)
  })

  it('given null for a window, then the shop has none', () => {
    expect(shopOf(withValue(smallFile(), '/windows', { cool: null })).windows.cool).toBeUndefined()
  })

  it('given retired entities among others, then they come last', () => {
    const shop = shopOf(withValue(smallFile(), '/varieties/0/retired', true))
    expect([...shop.varieties.values()].map(({ id, order, retired }) => [id, order, retired])).toEqual([
      ['sesame', 0, false],
      ['rye', 1, false],
      ['plain', 2, true],
    ])
  })

  it.each([
    ['the demo', demoFile],
    ['the biggest with the longest names', bigSetUpFile(28)],
  ])('given %s, then it is taken', (_name, file) => {
    expect(problemsOfFile(file)).toEqual([])
  })
})

describe('a mistake in a set-up file is told with its place, what is wrong and what would be right', () => {
  const NAME = 'A name of 1 to 24 characters in one line, without spaces at its ends.'
  const CLOCK = 'A time of day from "00:00" to "23:59", with two digits each.'
  it.each([
    // put in, at, then told at, what is wrong, what would be right
    ['boilboard set-up 2', '/format', '', '"format" is the text "boilboard set-up 2".', '"boilboard set-up 1".'],
    [undefined, '/kettle', '', '"kettle" is missing.', 'An object with "pieces", "cycle", "recover", "care".'],
    [
      [],
      '/hours',
      '',
      '"hours" is a list.',
      'An object with "ovenReady", "open", "changeover", "close", "secondMenu".',
    ],
    ['36', '/kettle/pieces', '', '"pieces" is the text "36".', 'A whole number from 1 to 500.'],
    [36.5, '/kettle/pieces', '', '"pieces" is 36.5.', 'A whole number from 1 to 500.'],
    [0, '/kettle/pieces', '', '"pieces" is 0.', 'A whole number from 1 to 500.'],
    [501, '/kettle/pieces', '', '"pieces" is 501.', 'A whole number from 1 to 500.'],
    [null, '/boards/count', '', '"count" is null.', 'A whole number from 0 to 300.'],
    [
      { seconds: 90, minutes: 2 },
      '/kettle/cycle',
      '',
      'Both seconds and minutes are given.',
      '{ "seconds": … } or { "minutes": … }, from 5 s to 1800 s.',
    ],
    [{ seconds: 1 }, '/kettle/cycle', '', 'It is 1 s.', '{ "seconds": … } or { "minutes": … }, from 5 s to 1800 s.'],
    [
      'Mars/Olympus',
      '/shop/zone',
      '',
      'No time zone is called "Mars/Olympus".',
      'A name of the IANA database, e.g. "America/Chicago".',
    ],
    ['fr', '/shop/language', '', '"language" is the text "fr".', '"en" or "es".'],
    ['6:00', '/hours/open', '', '"open" is the text "6:00".', CLOCK],
    ['24:00', '/hours/close', '', '"close" is the text "24:00".', CLOCK],
    ['Plain ', '/doughs/0/name', '', '"name" is the text "Plain ".', NAME],
    ['two\nlines', '/doughs/0/name', '', '"name" is the text "two\nlines".', NAME],
    ['x'.repeat(25), '/varieties/1/name', '', '"name" has 25 characters.', NAME],
    ['', '/varieties/1/name', '', '"name" has 0 characters.', NAME],
    [
      'Sesame!',
      '/varieties/1/id',
      '',
      '"id" is the text "Sesame!".',
      'Small letters, digits, dots and dashes, 64 at most; the first is a letter or digit.',
    ],
    ['wood', '/oven/kind', '', '"kind" is the text "wood".', '"shelves", "rotating" or "hearth".'],
    [undefined, '/oven/shelves/0/pieces', '', '"pieces" is missing.', 'The pieces that fit on this shelf.'],
    [
      'ofen',
      '/doughs/0/route/5',
      '',
      'Entry 6 is the text "ofen".',
      '"proof", "chill", "rack", "kettle", "boards" or "oven".',
    ],
    [
      { bake: { unit: 'h', earliest: 1, target: 2, latest: 400 } },
      '/windows',
      '/windows/bake/latest',
      'It is 400 h.',
      'At most 336 h.',
    ],
    // bounds that later checks count on
    [
      { bake: { unit: 'h', earliest: 0, target: 1, latest: -1 } },
      '/windows',
      '/windows/bake/latest',
      '"latest" is -1.',
      'A number from 0 to 1209600.',
    ],
    // keys
    [1, '/boards/peices', '', '"peices" is not a key that is known here.', '"pieces".'],
    [1, '/boards/x', '', '"x" is not a key that is known here.', 'One of "count", "pieces", "rewet".'],
    [1, '/varieties/0/toping', '', '"toping" is not a key that is known here.', '"topping".'],
    // between entries
    ['plain', '/varieties/2/id', '', 'The id "plain" stands at /varieties/0 already.', 'An id of its own.'],
    [
      'sesame',
      '/varieties/2/name',
      '',
      'Two varieties in use are called "sesame".',
      'A name of its own, or "sesame" retired.',
    ],
    ['wheat', '/varieties/1/dough', '', 'There is no dough "wheat".', 'The id of a dough: "plain", "rye".'],
    [
      true,
      '/doughs/1/retired',
      '/varieties/2/dough',
      'Its dough "rye" is retired.',
      'A dough in use, or the variety retired too.',
    ],
  ])('%j at %s', (value, at, told, wrong, right) => {
    const problems = problemsOfFile(withValue(smallFile(), at, value))
    expect(problems).toEqual([{ path: told === '' ? at : told, wrong, right }])
  })

  it('all mistakes at once, those between readable parts too', () => {
    const file = { ...smallFile(), kettle: 7, colour: 'red' }
    const worse = [
      ['/shop/zone', 'Nowhere'],
      ['/hours/close', '05:00'],
      ['/doughs/0/naem', 'Plain'],
      ['/varieties/1/dough', 'wheat'],
      ['/varieties/2/flip', false],
      ['/stations/0/acts', ['load']],
    ].reduce<object>((made, [path, value]) => withValue(made, String(path), value), file)
    expect(
      problemsOfFile(worse)
        .map(({ path }) => path)
        .sort(),
    ).toEqual([
      '/colour',
      '/doughs/0/naem',
      '/hours/close',
      '/kettle',
      '/shop/zone',
      '/stations',
      '/varieties/1/dough',
      '/varieties/2/flip',
    ])
  })

  it('a dough that cannot be read is no fault of its varieties', () => {
    const file = withValue(smallFile(), '/doughs/0/trayPieces', 0)
    expect(problemsOfFile(file).map(({ path }) => path)).toEqual(['/doughs/0/trayPieces'])
  })

  it.each([[null], [7], ['text'], [[]], [undefined]])('the whole file being %j', (file) => {
    expect(problemsOfFile(file)).toMatchObject([{ path: '', right: expect.stringContaining('An object with') }])
  })

  it('no more than people read at once', () => {
    const varieties = Array.from({ length: 300 }, () => ({}))
    expect(problemsOfFile({ ...smallFile(), varieties })).toHaveLength(PROBLEMS_MAX)
  })
})

describe('the JSON Schema of the set-up file', () => {
  const accepts = new Ajv2020({ allErrors: true }).compile(setUpJsonSchema())

  it.each([
    ['the demo', demoFile],
    ['a small one', smallFile()],
    ['a full one', fullFile()],
    ['one with a dough room', doughRoomFile()],
    ['one with a hearth', smallHearthFile()],
    ['a big one', bigSetUpFile(28)],
  ])('accepts %s', (_name, file) => {
    accepts(file)
    expect(accepts.errors).toBeNull()
  })

  it.each([
    ['/format', 'boilboard set-up 2'],
    ['/kettle/pieces', 1.5],
    ['/kettle/cycle', {}],
    ['/varieties/0/colour', 'red'],
    ['/doughs/0/name', ' Plain'],
    ['/hours', undefined],
  ])('refuses a fault at %s', (path, value) => {
    expect(accepts(withValue(smallFile(), path, value))).toBe(false)
  })

  it('says what it is for, and describes the fields that do not say it themselves', () => {
    expect(setUpJsonSchema()).toMatchObject({
      $schema: 'https://json-schema.org/draft/2020-12/schema',
      title: 'Set-up of a shop',
      required: ['format', 'shop', 'hours', 'kettle', 'boards', 'oven', 'doughs', 'varieties', 'stations'],
      properties: { kettle: { properties: { pieces: { description: expect.stringMatching(/kettle-full/) } } } },
    })
  })
})

describe('whatever is read as a set-up file', () => {
  it('given any value, then it is answered, never thrown', () => {
    fc.assert(
      fc.property(fc.anything({ withNullPrototype: true, withBigInt: true }), (raw) => !parseSetUpFile(raw, CHECKS).ok),
    )
  })

  it.each([
    ['the demo', demoFile],
    ['a dough room', doughRoomFile()],
  ])('given %s with anything anywhere, then it is taken, or refused with whole sentences', (_what, file) => {
    const paths = pathsIn(file)
    fc.assert(
      fc.property(fc.constantFrom(...paths), fc.anything(), (path, value) => {
        const parsed = parseSetUpFile(withValue(file, path, value), CHECKS)
        if (parsed.ok) return
        for (const problem of parsed.problems) {
          expect(problem.wrong).toMatch(/^["A-Z].*\.$/s)
          expect(problem.right).toMatch(/^["A-Z{0-9t].*\.$/s)
          expect(problem.path).toMatch(/^\//)
        }
      }),
      { numRuns: 200 },
    )
  })
})

function pathsIn(value: unknown, path = ''): string[] {
  const inside = typeof value === 'object' && value !== null ? Object.entries(value) : []
  return [...(path === '' ? [] : [path]), ...inside.flatMap(([key, one]) => pathsIn(one, `${path}/${key}`))]
}
