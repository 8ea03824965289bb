import fc from 'fast-check'

/** Real examples with something wrong in them: few wrong things in otherwise right ones get deepest into the code. */

const EDGE_NUMBERS = [
  -1,
  0,
  -0,
  1,
  0.5,
  -0.1,
  5_000,
  5_001,
  2 ** 31,
  2 ** 32,
  2 ** 53 - 1,
  2 ** 53,
  1e308,
  -1e308,
  5e-324,
]
const TIMES = [
  0, 1_577_836_799_999, 1_577_836_800_000, 4_102_444_800_000, 4_102_444_800_001, -62_135_596_800_000, 8.64e15,
]
export const EDGE_TEXTS = [
  '',
  ' ',
  '\0',
  '\ud800',
  '\udfff\ud800',
  '\u202e',
  '\ufeff',
  '\u2028',
  'İ',
  'ﬃ',
  'a\u0301'.repeat(50),
  '__proto__',
  'constructor',
  'toString',
  'hasOwnProperty',
  'null',
  'NaN',
  '-1',
  '1e9',
  '=1+1',
  '../../etc/passwd',
  '%00',
  '<script>',
  "'; --",
  '2026-02-30',
  '24:00',
  '\n',
  '\r\n',
  'x'.repeat(64),
  'x'.repeat(65),
  'x'.repeat(5_000),
  `${'a'.repeat(5_000)}!`,
  `${'a '.repeat(2_500)}!`,
]

/** Any text: edges, and drawn ones out of all code points, lone surrogates among them. */
export const anyText: fc.Arbitrary<string> = fc.oneof(
  fc.constantFrom(...EDGE_TEXTS),
  fc.string({ maxLength: 12 }),
  fc.string({ unit: 'binary', maxLength: 12 }),
  fc.array(fc.nat(0xffff), { maxLength: 6 }).map((units) => String.fromCharCode(...units)),
)

/** Any value that JSON can carry, and some that it cannot. */
export const anyValue: fc.Arbitrary<unknown> = fc.oneof(
  { weight: 3, arbitrary: fc.constantFrom<unknown>(...EDGE_NUMBERS) },
  { weight: 1, arbitrary: fc.constantFrom<unknown>(...TIMES) },
  { weight: 3, arbitrary: anyText },
  { weight: 2, arbitrary: fc.constantFrom<unknown>(null, true, false, [], {}, [[]], [null], { length: 3 }) },
  { weight: 1, arbitrary: fc.constantFrom<unknown>(Number.NaN, Number.POSITIVE_INFINITY, undefined) },
  { weight: 1, arbitrary: fc.double() },
  { weight: 1, arbitrary: fc.jsonValue({ maxDepth: 2 }) },
  { weight: 1, arbitrary: fc.constantFrom(10, 60, 600).map((depth) => nested(depth)) },
  { weight: 1, arbitrary: fc.constantFrom(41, 201, 2_000).map((many) => Array.from({ length: many }, () => ({}))) },
)

/** A list in a list in a list. */
export function nested(depth: number): unknown {
  let value: unknown = []
  for (let level = 0; level < depth; level += 1) value = level % 2 === 0 ? [value] : { a: value }
  return value
}

type Kind = 'replace' | 'drop' | 'add' | 'double' | 'swap' | 'borrow' | 'proto'
interface Mutation {
  readonly kind: Kind
  /** Which place of the value, counted over all places. */
  readonly place: number
  readonly other: number
  readonly value: unknown
}

const mutation: fc.Arbitrary<Mutation> = fc.record({
  kind: fc.constantFrom<Kind>('replace', 'replace', 'drop', 'add', 'double', 'swap', 'borrow', 'borrow', 'proto'),
  place: fc.nat(10_000),
  other: fc.nat(10_000),
  value: anyValue,
})

/** One of the examples with up to three things changed; the first of them is what a find shrinks to. */
export function mutated(examples: readonly unknown[]): fc.Arbitrary<unknown> {
  return fc
    .tuple(fc.nat(examples.length - 1), fc.array(mutation, { maxLength: 3 }))
    .map(([which, mutations]) => mutations.reduce<unknown>(mutate, copyOf(examples[which])))
}

interface Place {
  readonly holder: Record<string, unknown>
  readonly key: string
}

function mutate(value: unknown, { kind, place, other, value: fresh }: Mutation): unknown {
  const places = placesOf(value)
  const at = places[place % Math.max(1, places.length)]
  if (at === undefined) return kind === 'replace' ? fresh : value
  const { holder, key } = at
  const from = places[other % places.length]
  if (kind === 'replace') put(holder, key, fresh)
  else if (kind === 'drop') drop(holder, key)
  else if (kind === 'add') put(holder, typeof fresh === 'string' ? fresh : `${key}x`, fresh)
  else if (kind === 'double') double(holder, key)
  else if (kind === 'proto') put(holder, '__proto__', { isAdmin: true, type: 'openDay', pieces: 3 })
  else if (from !== undefined && kind === 'borrow') put(holder, key, copyOf(from.holder[from.key]))
  else if (from !== undefined) {
    const [one, two] = [holder[key], from.holder[from.key]]
    // Two places of which one holds the other would make a ring, which no JSON is.
    if (isInside(one, from.holder) || isInside(two, holder)) return value
    put(holder, key, two)
    put(from.holder, from.key, one)
  }
  return value
}

/** As JSON.parse does: a key that is called `__proto__` is a key. */
function put(holder: Record<string, unknown>, key: string, value: unknown): void {
  // A list of JSON has entries and nothing else.
  if (Array.isArray(holder) && !/^\d{1,4}$/.test(key)) holder.push(value)
  else Object.defineProperty(holder, key, { value, writable: true, enumerable: true, configurable: true })
}

function drop(holder: Record<string, unknown>, key: string): void {
  if (Array.isArray(holder)) holder.splice(Number(key), 1)
  else delete holder[key]
}

function double(holder: Record<string, unknown>, key: string): void {
  if (Array.isArray(holder)) holder.splice(Number(key), 0, copyOf(holder[Number(key)]))
  else put(holder, key, [holder[key], holder[key]])
}

/** What has been nested in itself too often to be copied becomes nothing. */
function copyOf(value: unknown): unknown {
  try {
    return structuredClone(value)
  } catch {
    return null
  }
}

const PLACES_MAX = 3_000

function placesOf(value: unknown): Place[] {
  const places: Place[] = []
  const waiting = [value]
  while (waiting.length > 0 && places.length < PLACES_MAX) {
    const one = waiting.pop()
    if (typeof one !== 'object' || one === null) continue
    for (const key of Object.keys(one)) {
      places.push({ holder: one as Record<string, unknown>, key })
      waiting.push((one as Record<string, unknown>)[key])
    }
  }
  return places
}

function isInside(holder: unknown, sought: unknown): boolean {
  return holder === sought || placesOf(holder).some(({ holder: one }) => one === sought)
}

/** What a mutated value is after the wire: JSON, or null when JSON cannot carry it. */
export function overWire(value: unknown): unknown {
  try {
    return JSON.parse(JSON.stringify(value) ?? 'null')
  } catch {
    return null
  }
}

/** A text made of pieces that matter to its reader, in any order, or a real one with pieces put in. */
export function textOf(pieces: readonly string[], examples: readonly string[]): fc.Arbitrary<string> {
  const piece = fc.oneof({ weight: 4, arbitrary: fc.constantFrom(...pieces) }, { weight: 1, arbitrary: anyText })
  const many = fc.array(piece, { maxLength: 24 }).map((all) => all.join(''))
  const cut = fc.record({ which: fc.nat(examples.length - 1), at: fc.nat(400), gone: fc.nat(12), put: piece })
  const broken = fc.tuple(cut, fc.array(cut, { maxLength: 2 })).map(([first, more]) => {
    const cutOne = (text: string, { at, gone, put: with_ }: typeof first) => {
      const from = at % (text.length + 1)
      return text.slice(0, from) + with_ + text.slice(from + gone)
    }
    return [first, ...more].reduce(cutOne, examples[first.which] ?? '')
  })
  return fc.oneof(many, broken)
}
