import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { z } from 'zod'
import { ASK_CODES } from '../../shared-core/day/answers.ts'
import { AT_MS_MAX, AT_MS_MIN, PIECES_MAX } from '../../shared-core/day/command-fields.ts'
import type { commandSchema } from '../../shared-core/day/command-schema.ts'
import { LINES_MAX, parseCommand } from '../../shared-core/day/command-schema.ts'
import type { ActType, Command } from '../../shared-core/day/commands.ts'
import { startingPoint } from '../../shared-core/shop/starting-points.ts'
import { AT_MS, COMMANDS, commandOf, HEAD } from './command-maker.ts'
import { withValue } from './shop/set-up-file-maker.ts'

/** The same type written in one way: what is read-only, and how it is put together, are no differences here. */
type Plain<Type> = Type extends string | number | boolean | null | undefined
  ? Type
  : Type extends readonly (infer Entry)[]
    ? readonly Plain<Entry>[]
    : { readonly [Key in keyof Type]: Plain<Type[Key]> }
type Same<A, B> = (<T>() => T extends A ? 1 : 2) extends <T>() => T extends B ? 1 : 2 ? true : false

function problemsAt(raw: unknown) {
  const parsed = parseCommand(raw, { isZone: (name) => name === 'America/Chicago' })
  return parsed.ok ? [] : parsed.problems
}

describe('a command from outside', () => {
  it('is by its schema what the contract says: the compiler checks this line', () => {
    const same: Same<Plain<z.output<typeof commandSchema>>, Plain<Command>> = true
    expect(same).toBe(true)
  })

  it.each(COMMANDS.map((one) => [one.type, one] as const))('given %s, then it is read as it is', (_type, command) => {
    expect(parseCommand(command)).toEqual({ ok: true, command })
  })

  it('there is one of each type above', () => {
    const all: Record<ActType, true> = Object.fromEntries(COMMANDS.map(({ type }) => [type, true])) as Record<
      ActType,
      true
    >
    expect(Object.keys(all)).toHaveLength(72)
  })

  it('given confirmed codes, or a device that knows no time, then they are read', () => {
    const command = { ...commandOf('closeDay'), confirmed: [...ASK_CODES], tappedAtMs: null }
    expect(parseCommand(command)).toEqual({ ok: true, command })
  })
})

describe('what is wrong with a command is told with its place', () => {
  const ID = 'Small letters, digits, dots and dashes, 64 at most; the first is a letter or digit.'
  const COMMAND_ID = 'Between 10 and 40 small letters and digits.'
  const PIECES = 'A whole number from 1 to 5000.'
  it.each([
    // of, at, put in, then wrong, right
    ['flip', '/id', 'short', '"id" is the text "short".', COMMAND_ID],
    ['flip', '/id', 'K7F3M2Q9XA', '"id" is the text "K7F3M2Q9XA".', COMMAND_ID],
    ['flip', '/id', undefined, '"id" is missing.', COMMAND_ID],
    ['flip', '/type', 'flipp', '"type" is the text "flipp".', 'A command of a type that is known here.'],
    ['flip', '/type', undefined, '"type" is missing.', 'A command of a type that is known here.'],
    ['flip', '/loadId', '../x', '"loadId" is the text "../x".', ID],
    ['flip', '/loadId', 'x'.repeat(65), `"loadId" is the text "${'x'.repeat(40)}…".`, ID],
    [
      'flip',
      '/shelfId',
      '1',
      '"shelfId" is not a key that is known here.',
      'One of "id", "deviceSeq", "tappedAtMs", "seenSeq", "seenCourse", "confirmed", "type", "loadId".',
    ],
    ['flip', '/loadid', 'x', '"loadid" is not a key that is known here.', '"loadId".'],
    ['flip', '/deviceSeq', 0, '"deviceSeq" is 0.', 'A whole number from 1 to 9007199254740991.'],
    [
      'flip',
      '/tappedAtMs',
      AT_MS_MIN - 1,
      `"tappedAtMs" is ${AT_MS_MIN - 1}.`,
      `A whole number from ${AT_MS_MIN} to ${AT_MS_MAX}.`,
    ],
    [
      'flip',
      '/tappedAtMs',
      AT_MS_MAX + 1,
      `"tappedAtMs" is ${AT_MS_MAX + 1}.`,
      `A whole number from ${AT_MS_MIN} to ${AT_MS_MAX}.`,
    ],
    [
      'flip',
      '/tappedAtMs',
      AT_MS + 0.5,
      `"tappedAtMs" is ${AT_MS + 0.5}.`,
      `A whole number from ${AT_MS_MIN} to ${AT_MS_MAX}.`,
    ],
    ['flip', '/confirmed', 'sure', '"confirmed" is the text "sure".', `A list of 0 to ${ASK_CODES.length} codes.`],
    ['dip', '/pieces', 0, '"pieces" is 0.', PIECES],
    ['dip', '/pieces', PIECES_MAX + 1, '"pieces" is 5001.', PIECES],
    ['dip', '/pieces', '36', '"pieces" is the text "36".', PIECES],
    ['dip', '/varietyId', undefined, '"varietyId" is missing.', ID],
    ['count', '/pieces', -1, '"pieces" is -1.', 'A whole number from 0 to 5000.'],
    ['moveBatch', '/to', 'oven', '"to" is the text "oven".', '"proof", "chill", "rack", "kettle" or "boards".'],
    ['shape', '/stage', 'kettle', '"stage" is the text "kettle".', '"proof", "chill" or "rack".'],
    ['out', '/from', 'cool', '"from" is the text "cool".', '"first-side" or "second-side".'],
    ['remove', '/fate', 'sold', '"fate" is the text "sold".', '"kitchen", "wasted" or "given".'],
    ['sell', '/lines', [], '"lines" has 0 entries.', 'A list of 1 to 40 lines.'],
    ['sell', '/lines', linesOf(LINES_MAX + 1), '"lines" has 41 entries.', 'A list of 1 to 40 lines.'],
    [
      'sell',
      '/lines/1/varietyId',
      'sesame',
      '"sesame" stands in an earlier line already.',
      'Each variety in one line.',
    ],
    ['setLoadList', '/loads/0/lines/0/pieces', 1.5, '"pieces" is 1.5.', PIECES],
    ['confirmPresumed', '/unsureIds', [], '"unsureIds" has 0 entries.', 'A list of 1 to 200 ids.'],
    ['takeBack', '/commandId', 'k7f3m2q9xa.1', '"commandId" is the text "k7f3m2q9xa.1".', COMMAND_ID],
    ['changeSetUp', '/changes', [], '"changes" has 0 entries.', 'A list of 1 to 2000 changes.'],
    ['changeSetUp', '/changes/0/entity', 'menu', '"entity" is the text "menu".', 'A part of the set-up.'],
    [
      'changeSetUp',
      '/changes/0/value/zone',
      'Nowhere',
      'No time zone is called "Nowhere".',
      'A name of the IANA database, e.g. "America/Chicago".',
    ],
    ['changeSetUp', '/changes/1/value/closeMinute', 0, 'The shop closes at 00:00, not after opening.', 'After 06:00.'],
    ['changeSetUp', '/changes/2/value/pieces', 501, '"pieces" is 501.', 'A whole number from 1 to 500.'],
    [
      'changeSetUp',
      '/changes/2/value',
      undefined,
      '"value" is missing.',
      'An object with "pieces", "cycleMs", "recoverMs", "care".',
    ],
    ['changeSetUp', '/changes/12/value/chill/unit', 'days', '"unit" is the text "days".', '"s", "min" or "h".'],
  ])('%s with %s being %j', (type, at, value, wrong, right) => {
    expect(problemsAt(withValue(commandOf(type), at, value))).toEqual([{ path: at, wrong, right }])
  })

  it('in a set-up, what does not fit inside one entity too', () => {
    const dough = [
      ...startingPoint('shelves', { name: 'New', zone: 'America/Chicago', language: 'en' }).doughs.values(),
    ][0]
    const change = { entity: 'dough', value: { ...dough, route: ['oven', 'proof'] } }
    const problems = problemsAt({ ...HEAD, type: 'changeSetUp', changes: [change] })
    expect(problems.map(({ path }) => path)).toEqual(Array(2).fill('/changes/0/value/route'))
  })

  it('all at once', () => {
    const command = { ...commandOf('load'), id: 7, lines: [{ varietyId: 'A', pieces: 0 }], more: 1 }
    expect(problemsAt(command).map(({ path }) => path)).toEqual([
      '/id',
      '/lines/0/varietyId',
      '/lines/0/pieces',
      '/more',
    ])
  })
})

describe('numbers that are two in the fold and one in JSON', () => {
  it('given a count of minus zero, then it is zero', () => {
    const parsed = parseCommand(JSON.parse(JSON.stringify(commandOf('count')).replace('"pieces":0', '"pieces":-0')))
    expect(parsed.ok && parsed.command.type === 'count' && Object.is(parsed.command.pieces, 0)).toBe(true)
  })
})

describe('whatever is read as a command', () => {
  it('given any value, then it is refused, never thrown', () => {
    const any = fc.anything({ withNullPrototype: true, withBigInt: true, withDate: true, withMap: true })
    fc.assert(
      fc.property(any, (raw) => !parseCommand(raw).ok),
      { numRuns: 300 },
    )
  })

  it('given a command with anything in one of its places, then what is taken is within bounds', () => {
    const places = COMMANDS.flatMap((command) => pathsIn(command).map((path) => ({ command, path })))
    const value = fc.oneof(fc.anything(), fc.jsonValue(), fc.double(), fc.constantFrom('__proto__', 'constructor'))
    fc.assert(
      fc.property(fc.constantFrom(...places), value, ({ command, path }, put) => {
        const spoiled = withValue(command, path, put)
        const parsed = parseCommand(spoiled)
        // Plain JSON comes out as it went in: nothing is dropped or made up.
        if (parsed.ok) expect(parsed.command).toEqual(JSON.parse(JSON.stringify(spoiled)))
        else expect(parsed.problems.length).toBeGreaterThan(0)
      }),
      { numRuns: 1_000 },
    )
  })

  it('given keys of JavaScript itself, then they are refused as unknown', () => {
    const raw: unknown = JSON.parse(JSON.stringify(commandOf('flip')).replace('{', '{"__proto__":{"a":1},'))
    expect(problemsAt(raw)).toMatchObject([{ path: '/__proto__' }])
  })
})

function linesOf(count: number) {
  return Array.from({ length: count }, (_, at) => ({ varietyId: `v${at}`, pieces: 1 }))
}

function pathsIn(value: unknown, path = ''): string[] {
  const inside = typeof value === 'object' && value !== null ? Object.entries(value) : []
  return [...(path === '' ? [] : [path]), ...inside.flatMap(([key, one]) => pathsIn(one, `${path}/${key}`))]
}
