import { bakingCrossMisfits } from './baking-rules.ts'
import { formulaCrossMisfits } from './formula-cross-rules.ts'
import { kitchenCrossMisfits } from './kitchen-rules.ts'
import type { Misfit } from './misfit.ts'
import { broken } from './misfit.ts'
import { IN_USE_MAX, KEPT_MAX } from './set-up-limits.ts'
import type { ListName, SetUpParts } from './set-up-parts.ts'
import type { Variety } from './shop.ts'
import { flipsTooLate } from './window-rules.ts'

/** What does not fit between the parts of a set-up. */
export function crossMisfits(parts: SetUpParts): Misfit[] {
  return [
    ...listMisfits('ingredient', parts.ingredients, parts),
    ...listMisfits('preparation', parts.preparations, parts),
    ...listMisfits('formula', parts.formulas, parts),
    ...listMisfits('shelf', parts.shelves, parts),
    ...listMisfits('dough', parts.doughs, parts),
    ...listMisfits('topping', parts.toppings, parts),
    ...listMisfits('variety', parts.varieties, parts),
    ...listMisfits('station', parts.stations, parts),
    ...listMisfits('person', parts.people, parts),
    ...listMisfits('step', parts.steps, parts, ({ list }) => list),
    ...listMisfits('specialDay', parts.specialDays, parts),
    ...listMisfits('kitchenStation', parts.kitchenStations, parts),
    ...listMisfits('portion', parts.portions, parts),
    ...listMisfits('menuItem', parts.menu, parts),
    ...listMisfits('run', parts.runs, parts),
    ...ovenTimeMisfits(parts),
    ...ovenMisfits(parts),
    ...tapMisfits(parts),
    ...formulaCrossMisfits(parts),
    ...bakingCrossMisfits(parts),
    ...kitchenCrossMisfits(parts),
    ...parts.varieties.flatMap((variety) => madeOfMisfits(variety, parts)),
    ...parts.varieties.flatMap((variety) => toppedMisfits(variety, parts)),
  ]
}

interface Listed {
  readonly id: string
  readonly name: string
  readonly retired: boolean
}
const PLURAL: Readonly<Record<ListName, string>> = {
  ingredient: 'ingredients',
  preparation: 'preparations',
  formula: 'formulas',
  shelf: 'shelves',
  dough: 'doughs',
  topping: 'toppings',
  variety: 'varieties',
  station: 'stations',
  person: 'people',
  step: 'steps',
  specialDay: 'special days',
  kitchenStation: 'kitchen stations',
  portion: 'portions',
  menuItem: 'items of the menu',
  run: 'runs',
}
/** Without one of each of these nothing can be baked. */
const NEEDED: ReadonlySet<ListName> = new Set<ListName>(['shelf', 'dough', 'variety', 'station'])

/**
 * Enough and not too many of a kind, and no two in use with the same name: people would not tell them apart.
 * @param among names need differ only where this is the same
 */
function listMisfits<One extends Listed>(
  entity: ListName,
  list: readonly One[],
  { unread }: SetUpParts,
  among: (one: One) => string = () => '',
): Misfit[] {
  const used = list.filter((one) => !one.retired)
  const [most, plural] = [IN_USE_MAX[entity], PLURAL[entity]]
  const firstOf = new Map<string, Listed>()
  const sameNames = used.flatMap((one) => {
    const name = `${among(one)} ${one.name.normalize('NFC').toLowerCase()}`
    const before = firstOf.get(name)
    if (before === undefined) firstOf.set(name, one)
    const wrong = `Two ${plural} in use are called "${one.name}".`
    const right = `A name of its own, or "${before?.id}" retired.`
    return broken({ entity, id: one.id }, [[before !== undefined, 'name', wrong, right]])
  })
  const whole = broken({ entity, id: null }, [
    [used.length === 0 && NEEDED.has(entity) && !unread.has(entity), '', `No ${entity} is in use.`, 'One at least.'],
    [used.length > most, '', `${used.length} ${plural} are in use.`, `At most ${most}; retire others.`],
    [list.length > KEPT_MAX, '', `There are ${list.length} ${plural}.`, `At most ${KEPT_MAX}, retired ones included.`],
  ])
  return [...whole, ...sameNames]
}

/** The oven's two times can never be unknown: keys and the wall count down to them. */
function ovenTimeMisfits({ windows }: SetUpParts): Misfit[] {
  if (windows === null) return []
  return (['firstSide', 'bake'] as const).flatMap((stage) =>
    broken({ entity: 'windows', id: null }, [
      [windows[stage] === undefined, stage, `The shop has no window for "${stage}".`, 'A window: every load needs it.'],
    ]),
  )
}

/** A hearth is one floor counted in boards; other ovens have shelves counted in pieces. */
function ovenMisfits({ oven, shelves, unread }: SetUpParts): Misfit[] {
  if (oven === null) return []
  const isHearth = oven.kind === 'hearth'
  const used = shelves.filter((shelf) => !shelf.retired)
  const floors = used.filter((shelf) => shelf.floorBoards !== null)
  const misplaced = used.flatMap(({ id, floorBoards }) =>
    broken({ entity: 'shelf', id }, [
      [isHearth && floorBoards === null, '', `A hearth has no shelves, and "${id}" is one.`, 'Retire it.'],
      [
        !isHearth && floorBoards !== null,
        '',
        `"${id}" is a hearth's floor, and the oven has shelves.`,
        'Pieces, or retire it.',
      ],
    ]),
  )
  const count = broken({ entity: 'shelf', id: null }, [
    [isHearth && floors.length > 1, '', `The hearth has ${floors.length} floors.`, 'One.'],
    [isHearth && floors.length === 0 && !unread.has('shelf'), '', 'The hearth has no floor.', 'One, in boards.'],
  ])
  return [...misplaced, ...count]
}

/** Load and out are seen only by who does them: they are never presumed, so somebody must be able to tap them. */
function tapMisfits({ stations, unread }: SetUpParts): Misfit[] {
  const tapped = new Set(stations.filter((station) => !station.retired).flatMap((station) => station.acts))
  return (['load', 'out'] as const).flatMap((act) =>
    broken({ entity: 'station', id: null }, [
      [
        !tapped.has(act) && !unread.has('station'),
        '',
        `No station in use taps "${act}".`,
        `"${act}" among the acts of one station at least.`,
      ],
    ]),
  )
}

/** A variety against its dough, the boards and the oven's times; of a retired one only that its dough is known. */
function madeOfMisfits(variety: Variety, parts: SetUpParts): Misfit[] {
  const { id, doughId, bakedOn, windows } = variety
  const whose = { entity: 'variety', id } as const
  const dough = parts.doughs.find((one) => one.id === doughId)
  if (dough === undefined) {
    const right = `The id of a dough: ${[...parts.doughIds].map((known) => `"${known}"`).join(', ')}.`
    return broken(whose, [[!parts.doughIds.has(doughId), 'doughId', `There is no dough "${doughId}".`, right]])
  }
  if (variety.retired) return []
  const firstSide = windows.firstSide ?? dough.windows.firstSide ?? parts.windows?.firstSide
  const bake = windows.bake ?? dough.windows.bake ?? parts.windows?.bake
  // Where both come from one place, `windowMisfits` has said it there.
  const oneOwner = [variety, dough, parts].some(
    (owner) => owner.windows?.firstSide === firstSide && owner.windows?.bake === bake,
  )
  const late = variety.flip && !oneOwner ? flipsTooLate(firstSide, bake) : null
  const offRoute = bakedOn === 'board' && !dough.route.includes('boards')
  const boardless = bakedOn === 'board' && parts.boards?.count === 0
  return broken(whose, [
    [dough.retired, 'doughId', `Its dough "${doughId}" is retired.`, 'A dough in use, or the variety retired too.'],
    [
      offRoute,
      'bakedOn',
      `Baked on a board, and "${doughId}" has none on its route.`,
      '"pan", or boards on the route.',
    ],
    [boardless, 'bakedOn', 'Baked on a board, and the shop has no boards.', '"pan", or the number of boards.'],
    [late !== null, 'windows', late ?? '', 'A bake longer than its first side.'],
  ])
}

/** A variety against its topping; a retired variety may name a retired one, and nothing that never was. */
function toppedMisfits({ id, toppingId, retired }: Variety, { toppings, toppingIds }: SetUpParts): Misfit[] {
  if (toppingId === null) return []
  const topping = toppings.find((one) => one.id === toppingId)
  const known = [...toppingIds].map((one) => `"${one}"`).join(', ')
  const right = known === '' ? 'None, or a topping of that id.' : `The id of a topping: ${known}.`
  const inUse = 'A topping in use, or the variety retired too.'
  return broken({ entity: 'variety', id }, [
    [!toppingIds.has(toppingId), 'toppingId', `There is no topping "${toppingId}".`, right],
    [topping?.retired === true && !retired, 'toppingId', `Its topping "${toppingId}" is retired.`, inUse],
  ])
}
