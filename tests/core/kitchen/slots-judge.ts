import type { SlotPart, SlotsGiven, SlotsPlan } from '../../../shared-core/kitchen/slots.ts'

/** A judge of oven plans that shares no code with the planner: what is wrong with a plan, and how late it is. */
export function wrongWith(given: SlotsGiven, plan: SlotsPlan): readonly string[] {
  const wrong: string[] = []
  const parts = new Map(given.parts.map((part) => [part.id, part]))
  const uses = new Map<string, { from: number; to: number }[]>()
  for (const { partId, shelfId, places, atMs, endMs } of plan.starts) {
    const part = parts.get(partId)
    const shelf = given.shelves.find(({ id }) => id === shelfId)
    if (part === undefined || shelf === undefined) {
      wrong.push(`${partId} or ${shelfId} is not known`)
      continue
    }
    parts.delete(partId)
    if (atMs < part.readyMs) wrong.push(`${partId} goes in before it is ready`)
    if (atMs < given.nowMs) wrong.push(`${partId} goes in before now`)
    if (endMs !== atMs + part.bakeMs) wrong.push(`${partId} does not bake as long as it must`)
    if (given.stopMs !== null && endMs > given.stopMs) wrong.push(`${partId} comes out after the oven closes`)
    if (new Set(places).size !== part.slots) wrong.push(`${partId} does not have its places`)
    for (const place of places) {
      const freeMs = shelf.freeMs[place]
      if (freeMs === undefined || atMs < freeMs) wrong.push(`${partId} goes in where there is no room`)
      const key = `${shelfId} ${place}`
      uses.set(key, [...(uses.get(key) ?? []), { from: atMs, to: endMs + given.handlingMs }])
    }
  }
  for (const [key, some] of uses) {
    const inTurn = [...some].sort((one, other) => one.from - other.from)
    inTurn.forEach(({ from }, at) => {
      if (at > 0 && from < (inTurn[at - 1]?.to ?? 0)) wrong.push(`two at once at ${key}`)
    })
  }
  const left = [...parts.keys()].filter((id) => !plan.tooLate.includes(id))
  return [...wrong, ...left.map((id) => `${id} is neither put in nor too late`)]
}

/** Sum over the orders of how late each is complete, with all of its parts put in. */
export function latenessOf(given: SlotsGiven, endMs: ReadonlyMap<string, number>): number {
  return given.orders.reduce((sum, { id, dueMs, otherReadyMs }) => {
    const mine = given.parts.filter(({ orderId }) => orderId === id)
    const complete = mine.reduce((at, part) => Math.max(at, (endMs.get(part.id) ?? 0) + part.afterMs), otherReadyMs)
    return sum + Math.max(0, complete - dueMs)
  }, 0)
}

/** The least total lateness by trying every order of the parts and every set of places for each. Six parts at most. */
export function leastLateness(given: SlotsGiven): number {
  let least = Number.POSITIVE_INFINITY
  const endMs = new Map<string, number>()
  const put = (left: readonly SlotPart[], free: readonly (readonly number[])[]): void => {
    if (left.length === 0) {
      least = Math.min(least, latenessOf(given, endMs))
      return
    }
    for (const part of left) {
      const rest = left.filter((one) => one !== part)
      free.forEach((places, shelf) => {
        for (const chosen of setsOf(places, part.slots)) {
          const atMs = Math.max(given.nowMs, part.readyMs, ...chosen.map((place) => places[place] ?? 0))
          endMs.set(part.id, atMs + part.bakeMs)
          const after = places.map((freeMs, place) =>
            chosen.includes(place) ? atMs + part.bakeMs + given.handlingMs : freeMs,
          )
          put(
            rest,
            free.map((some, at) => (at === shelf ? after : some)),
          )
        }
      })
      endMs.delete(part.id)
    }
  }
  put(
    given.parts,
    given.shelves.map(({ freeMs }) => freeMs),
  )
  return least
}

/** Sets of so many places; of places that are free alike only the first ones. */
function setsOf(places: readonly number[], count: number, from = 0): readonly (readonly number[])[] {
  if (count === 0) return [[]]
  const sets: (readonly number[])[] = []
  for (let place = from; place < places.length; place += 1) {
    if (place > from && places[place] === places[place - 1]) continue
    for (const rest of setsOf(places, count - 1, place + 1)) sets.push([place, ...rest])
  }
  return sets
}
