import { z } from 'zod'
import type { Problem } from './problem.ts'
import { PROBLEMS_MAX, problemsOf } from './problems.ts'
import type { Draft } from './set-up-draft.ts'
import { draftOf } from './set-up-draft.ts'
import { partsMisfits } from './set-up-rules.ts'
import { setUpFile } from './set-up-schema.ts'
import type { Shop } from './shop.ts'

/** What only the machine that reads the file can tell. */
export interface SetUpChecks {
  /** Whether a time zone of this name is known, e.g. `America/Chicago`. */
  readonly isZone: (name: string) => boolean
}

export type SetUpParsed =
  | { readonly ok: true; readonly shop: Shop }
  | { readonly ok: false; readonly problems: readonly Problem[] }

/**
 * Reads the set-up file that people write (its form: `set-up-schema.ts`).
 * @param raw the file's JSON, parsed
 * @returns the shop, or every mistake that can be told at once, at most `PROBLEMS_MAX`, one for a place. Never throws.
 */
export function parseSetUpFile(raw: unknown, checks: SetUpChecks): SetUpParsed {
  const read = setUpFile.safeParse(raw)
  const draft = draftOf(raw)
  const problems = [
    ...(read.success ? [] : problemsOf(read.error.issues, raw)),
    ...draft.doubled,
    ...zoneProblems(draft, checks),
    ...partsMisfits(draft.parts).map((misfit) => ({
      path: draft.placeOf(misfit),
      wrong: misfit.wrong,
      right: misfit.right,
    })),
  ]
  const shop = problems.length > 0 ? null : shopOf(draft)
  return shop === null ? { ok: false, problems: firstOfEachPlace(problems) } : { ok: true, shop }
}

/** The file's form as a JSON Schema (draft 2020-12), for editors and other programs. It cannot say which parts fit. */
export function setUpJsonSchema(): object {
  return z.toJSONSchema(setUpFile, { io: 'input', target: 'draft-2020-12' })
}

function zoneProblems({ profile }: Draft, { isZone }: SetUpChecks): Problem[] {
  if (profile === null || isZone(profile.zone)) return []
  const right = 'A name of the IANA database, e.g. "America/Chicago".'
  return [{ path: '/shop/zone', wrong: `No time zone is called "${profile.zone}".`, right }]
}

function firstOfEachPlace(problems: readonly Problem[]): Problem[] {
  const first = new Map<string, Problem>()
  for (const problem of problems) if (!first.has(problem.path)) first.set(problem.path, problem)
  return [...first.values()].slice(0, PROBLEMS_MAX)
}

/** Null while a part is missing, which zod has then said. */
function shopOf({ profile, kettle, counter, demand, cooler, parts }: Draft): Shop | null {
  const { hours, boards, baking, orders, oven, windows, mixer, doughRoom } = parts
  if (profile === null || kettle === null || counter === null || demand === null || hours === null) return null
  if (boards === null || baking === null || orders === null || oven === null || windows === null) return null
  return {
    profile,
    hours,
    kettle,
    boards,
    oven,
    mixer,
    cooler,
    doughRoom,
    counter,
    demand,
    baking,
    orders,
    windows,
    ingredients: ordered(parts.ingredients),
    preparations: ordered(parts.preparations),
    formulas: ordered(parts.formulas),
    shelves: ordered(parts.shelves),
    doughs: ordered(parts.doughs),
    toppings: ordered(parts.toppings),
    varieties: ordered(parts.varieties),
    stations: ordered(parts.stations),
    people: ordered(parts.people),
    steps: ordered(parts.steps),
    specialDays: ordered(parts.specialDays),
    kitchenStations: ordered(parts.kitchenStations),
    portions: ordered(parts.portions),
    menu: ordered(parts.menu),
    runs: ordered(parts.runs),
    weekdays: new Map(parts.weekdays.map((weekday) => [weekday.id, weekday])),
  }
}

/** By id, counted from 0 in the file's order; the retired ones come after the others, so that an export reads alike. */
function ordered<Id, Entity extends { readonly id: Id; readonly retired: boolean }>(
  list: readonly Entity[],
): Map<Id, Entity> {
  const sorted = [...list.filter(({ retired }) => !retired), ...list.filter(({ retired }) => retired)]
  return new Map(sorted.map((entity, order) => [entity.id, { ...entity, order }]))
}
