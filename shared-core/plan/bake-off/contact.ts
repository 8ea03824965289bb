import type { BakeLoad, BakeOff } from './bake-off.ts'

/** Bits that a number has for kinds of allergens; kinds beyond them count as one. */
const KINDS_MAX = 30

/** Varieties by their place; allergens as bits. */
export interface Contacts {
  readonly brings: Int32Array
  readonly avoids: Int32Array
  readonly now: number
  readonly costOfPiece: number
  /** Minutes of washes, ascending. */
  readonly washes: readonly number[]
}

/** Null where nothing costs anything: nobody avoids what others bring, or contact has no price. */
export function contactsOf(given: BakeOff): Contacts | null {
  const { varieties, contactNow = [], contactCost = 0, washes = [] } = given
  const kinds = [...new Set([...contactNow, ...varieties.flatMap(({ brings = [] }) => brings)])]
  const bits = (names: readonly string[] = []) =>
    names.reduce(
      (mask, name) => (kinds.includes(name) ? mask | (1 << Math.min(kinds.indexOf(name), KINDS_MAX)) : mask),
      0,
    )
  const avoids = Int32Array.from(varieties, (variety) => bits(variety.avoids))
  if (contactCost <= 0 || avoids.every((mask) => mask === 0)) return null
  return {
    brings: Int32Array.from(varieties, ({ brings }) => bits(brings)),
    avoids,
    now: bits(contactNow),
    costOfPiece: contactCost,
    washes: [...washes].sort((one, other) => one - other),
  }
}

/**
 * Follows the water and boards through loads in the order of their kettle starts: a piece that is boiled after what its
 * variety should avoid costs. In a load those that avoid something go first, so that its own lines do not touch them.
 */
export class ContactCourse {
  readonly #contacts: Contacts
  #there: number
  #wash = 0
  cost = 0

  constructor(contacts: Contacts) {
    this.#contacts = contacts
    this.#there = contacts.now
  }

  /** The next load begins: what a wash before it has taken away is gone. */
  begin(kettleStart: number): void {
    const { washes } = this.#contacts
    for (; (washes[this.#wash] ?? Number.POSITIVE_INFINITY) <= kettleStart; this.#wash++) this.#there = 0
  }

  meet(variety: number, pieces: number): void {
    const { avoids, costOfPiece } = this.#contacts
    if (((avoids[variety] as number) & this.#there) !== 0) this.cost += pieces * costOfPiece
  }

  bring(variety: number): void {
    this.#there |= this.#contacts.brings[variety] as number
  }
}

/** What the contacts of loads cost in a plan's eyes: no money that anybody pays. @param loads in any order */
export function contactCostOf(given: BakeOff, loads: readonly BakeLoad[]): number {
  const contacts = contactsOf(given)
  if (contacts === null) return 0
  const course = new ContactCourse(contacts)
  const inTurn = [...loads, ...(given.pinned ?? [])].sort((one, other) => one.kettleStart - other.kettleStart)
  for (const { kettleStart, lines } of inTurn) {
    const known = lines.flatMap(([name, pieces]) => {
      const variety = given.varieties.findIndex((one) => one.name === name)
      return variety < 0 ? [] : [{ variety, pieces }]
    })
    course.begin(kettleStart)
    for (const { variety, pieces } of known) course.meet(variety, pieces)
    for (const { variety } of known) course.bring(variety)
  }
  return course.cost
}
