import { durationMs } from '../units.ts'
import { allergenTwice } from './formula-rules.ts'
import { clockText, spanText } from './human-time.ts'
import type { MenuItem, MenuStep, Portion, Run } from './kitchen.ts'
import type { Misfit, Rule } from './misfit.ts'
import { broken } from './misfit.ts'
import type { SetUpParts } from './set-up-parts.ts'

/** What does not fit in what is made to order, and between it and the rest of the shop. */

export function portionMisfits({ id, contains }: Portion): Misfit[] {
  return broken({ entity: 'portion', id }, [allergenTwice(contains)])
}

export function menuItemMisfits({ id, onBagel, canToast, portions, steps }: MenuItem): Misfit[] {
  const ids = portions.map(({ portionId }) => portionId)
  const twice = ids.find((one, at) => ids.indexOf(one) !== at)
  const bare = 'It can be toasted, and is not made on a bagel.'
  return broken({ entity: 'menuItem', id }, [
    [twice !== undefined, 'portions', `"${twice}" stands twice.`, 'Each portion once, with how many.'],
    [canToast && !onBagel, 'canToast', bare, 'Made on a bagel, or not toasted.'],
    ...steps.flatMap(turnRules),
  ])
}

/** Turns and moves come while it bakes, in order. */
function turnRules({ takesMs, oven }: MenuStep, step: number): Rule[] {
  return (oven?.turns ?? []).flatMap(({ afterMs, what }, at): Rule[] => {
    const field = `steps/${step}/oven/turns/${at}/afterMs`
    const [text, takes] = [spanText(afterMs, 's'), spanText(takesMs, 's')]
    const before = oven?.turns[at - 1]?.afterMs ?? durationMs(0)
    const out = what === 'turn' ? 'turned' : 'moved'
    return [
      [afterMs >= takesMs, field, `It is ${out} after ${text}, and is out after ${takes}.`, `Before ${takes}.`],
      [
        afterMs <= before,
        field,
        `${text} is not after ${spanText(before, 's')}.`,
        'Times in order, each of them once.',
      ],
    ]
  })
}

/** Items against stations, portions and the oven's places, runs against the day. */
export function kitchenCrossMisfits(parts: SetUpParts): Misfit[] {
  const slots = parts.shelves.filter(({ retired }) => !retired).map((shelf) => shelf.slots)
  const most = parts.unread.has('shelf') ? Number.POSITIVE_INFINITY : Math.max(0, ...slots)
  return [
    ...parts.menu.flatMap((item) =>
      broken({ entity: 'menuItem', id: item.id }, [
        ...item.steps.flatMap((step, at) => stationRules(item, step, at, parts)),
        ...item.portions.flatMap((_, at) => madeOfRules(item, at, parts)),
        ...(item.retired ? [] : item.steps.flatMap((step, at) => slotRules(step, at, most))),
      ]),
    ),
    ...parts.runs.flatMap((run) => runMisfits(run, parts)),
  ]
}

/** A retired item may name what is retired, and nothing that never was. */
function stationRules(item: MenuItem, { stationId }: MenuStep, at: number, parts: SetUpParts): Rule[] {
  const station = parts.kitchenStations.find(({ id }) => id === stationId)
  const [field, known] = [`steps/${at}/stationId`, namesOf(parts.kitchenStationIds)]
  const right = known === '' ? 'A station of the kitchen first.' : `The id of a station of the kitchen: ${known}.`
  const retired = station?.retired === true && !item.retired
  return [
    [!parts.kitchenStationIds.has(stationId), field, `The kitchen has no station "${stationId}".`, right],
    [retired, field, `Its station "${stationId}" is retired.`, 'A station in use, or the item retired too.'],
  ]
}

function madeOfRules(item: MenuItem, at: number, parts: SetUpParts): Rule[] {
  const portionId = item.portions[at]?.portionId
  const portion = parts.portions.find(({ id }) => id === portionId)
  const [field, known] = [`portions/${at}/portionId`, namesOf(parts.portionIds)]
  const right = known === '' ? 'No portions, or one of that id.' : `The id of a portion: ${known}.`
  const retired = portion?.retired === true && !item.retired
  return [
    [portionId === undefined || !parts.portionIds.has(portionId), field, `There is no portion "${portionId}".`, right],
    [retired, field, `Its portion "${portionId}" is retired.`, 'A portion in use, or the item retired too.'],
  ]
}

/** Without any place the second menu has no oven yet, which the desk shows; a step that no shelf can take is a mistake. */
function slotRules({ oven }: MenuStep, at: number, most: number): Rule[] {
  const slots = oven?.slots ?? 0
  const wrong = `It takes ${slots} places, and no shelf has more than ${most}.`
  return [[most > 0 && slots > most, `steps/${at}/oven/slots`, wrong, `At most ${most}, or more places on a shelf.`]]
}

/** The van leaves with what was baked that day; a weekday's own hours may leave it no time. */
function runMisfits({ id, retired, leavesMinute }: Run, { hours }: SetUpParts): Misfit[] {
  if (hours === null || retired) return []
  const { ovenReadyMinute: ready, closeMinute: close } = hours
  const wrong = `It leaves at ${clockText(leavesMinute)}, when nobody is there.`
  const right = `After ${clockText(ready)}, when the oven is ready, and ${clockText(close)} at the latest.`
  return broken({ entity: 'run', id }, [[leavesMinute <= ready || leavesMinute > close, 'leavesMinute', wrong, right]])
}

function namesOf(ids: ReadonlySet<string>): string {
  return [...ids].map((id) => `"${id}"`).join(', ')
}
