import type { MinutesOfDay, MinutesOfMix } from './order-maker.ts'

/** The cost of an order worked out a second time, in minutes and without anything of the searches' own. */
export interface BruteCost {
  readonly contacts: number
  readonly washes: number
  readonly late: number
}

const WASH = 10

/** All orders, tried one by one. @returns the least cost */
export function bruteLeast(day: MinutesOfDay): BruteCost {
  return bruteCost(bruteFirst(day), day.proofTrays)
}

/** Of the orders that cost least the first, as the day lists its mixes. */
export function bruteFirst(day: MinutesOfDay): readonly MinutesOfMix[] {
  let first: { readonly order: readonly MinutesOfMix[]; readonly cost: BruteCost } | null = null
  for (const order of permutations(day.tasks)) {
    const cost = bruteCost(order, day.proofTrays)
    if (first === null || isLess(cost, first.cost)) first = { order, cost }
  }
  return first?.order ?? []
}

export function bruteCost(order: readonly MinutesOfMix[], proofTrays: number | null): BruteCost {
  let minute = 0
  let washes = 0
  let contacts = 0
  const ready: { readonly task: MinutesOfMix; readonly at: number }[] = []
  for (const [place, task] of order.entries()) {
    const last = order[place - 1]
    const has = new Set(task.allergens)
    const met = new Set(order.slice(0, place).flatMap(({ allergens = [] }) => allergens))
    contacts += [...met].filter((allergen) => !has.has(allergen)).length
    if (last !== undefined) {
      const isDirty = (last.allergens ?? []).some((allergen) => !has.has(allergen))
      if (isDirty || (last.strength ?? 0) > (task.strength ?? 0)) {
        washes += 1
        minute += WASH
      }
    }
    minute = Math.max(minute, task.earliest ?? 0) + (task.mix ?? 0)
    ready.push({ task, at: minute + (task.wait ?? 0) })
  }
  return { contacts, washes, late: lateAtBench(ready, proofTrays) }
}

/** Takes the first ready again and again, and looks minute by minute for room. */
function lateAtBench(ready: { readonly task: MinutesOfMix; readonly at: number }[], proofTrays: number | null): number {
  const left = [...ready]
  const racks: { readonly from: number; readonly to: number; readonly trays: number }[] = []
  let free = 0
  let late = 0
  while (left.length > 0) {
    const at = Math.min(...left.map((one) => one.at))
    const [next] = left.splice(
      left.findIndex((one) => one.at === at),
      1,
    )
    if (next === undefined) break
    const { bench = 0, proof = 0, trays = 0, due = 0 } = next.task
    let begin = Math.max(free, next.at)
    const standing = () => racks.filter(({ to }) => to > begin).reduce((sum, rack) => sum + rack.trays, 0)
    while (proofTrays !== null && standing() > 0 && standing() + trays > proofTrays) begin += 1
    free = begin + bench
    racks.push({ from: begin, to: free + proof, trays })
    late += Math.max(0, free + proof - due)
  }
  return late
}

function isLess(one: BruteCost, other: BruteCost): boolean {
  if (one.contacts !== other.contacts) return one.contacts < other.contacts
  return one.washes !== other.washes ? one.washes < other.washes : one.late < other.late
}

function* permutations<Thing>(things: readonly Thing[]): Generator<readonly Thing[]> {
  if (things.length <= 1) {
    yield things
    return
  }
  for (const [place, thing] of things.entries())
    for (const rest of permutations([...things.slice(0, place), ...things.slice(place + 1)])) yield [thing, ...rest]
}
