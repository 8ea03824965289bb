import { allergenTwice, madeOfTwice, weightRules } from './formula-rules.ts'
import { clockText } from './human-time.ts'
import type { Misfit, Whose } from './misfit.ts'
import { broken } from './misfit.ts'
import { SHELF_PIECES_MAX } from './set-up-limits.ts'
import type { BatchStage, Dough, Hours, Mixer, Shelf, Station, Step, Topping, Variety, Weekday } from './shop.ts'
import { milligrams, weightText } from './weight.ts'
import { windowMisfits } from './window-rules.ts'

const USUAL_HOURS = { entity: 'hours', id: null } as const

/** A day lies inside one calendar day: oven ready, open, changeover, close, in that order. */
export function hoursMisfits(hours: Hours, whose: Whose = USUAL_HOURS): Misfit[] {
  const { ovenReadyMinute: oven, openMinute: open, closeMinute: close } = hours
  const [ovenText, openText, closeText] = [oven, open, close].map(clockText)
  return [
    ...broken(whose, [
      [oven > open, 'ovenReadyMinute', `The oven is ready at ${ovenText}, after opening.`, `${openText} or before.`],
      [open >= close, 'closeMinute', `The shop closes at ${closeText}, not after opening.`, `After ${openText}.`],
    ]),
    ...broken(whose, changeoverRules(hours)),
  ]
}

/** Hours of its own are held to what the usual ones are. */
export function weekdayMisfits({ id, hours, retired }: Weekday): Misfit[] {
  return hours === null || retired ? [] : hoursMisfits(hours, { entity: 'weekday', id })
}

function changeoverRules(hours: Hours) {
  const { openMinute: open, closeMinute: close, changeoverFromMinute: from, changeoverToMinute: to } = hours
  if (from === null || to === null) {
    const right = 'Both ends of the changeover, or neither.'
    const menu = 'There is a second menu and no changeover to it.'
    return [
      [from !== to, 'changeoverFromMinute', 'The changeover has only one end.', right],
      [from === to && hours.secondMenu !== null, 'secondMenu', menu, 'No second menu, or the hours of the changeover.'],
    ] as const
  }
  const [openText = '', closeText = '', fromText = '', toText = ''] = [open, close, from, to].map(clockText)
  const early = `The changeover begins at ${fromText}, when the shop is closed.`
  const backwards = `The changeover ends at ${toText}, not after it begins.`
  const late = `The changeover ends at ${toText}, after closing.`
  return [
    [from < open || from > close, 'changeoverFromMinute', early, `From ${openText} to ${closeText}.`],
    [from >= to, 'changeoverToMinute', backwards, `After ${fromText}.`],
    [to > close, 'changeoverToMinute', late, `${closeText} or before.`],
  ] as const
}

/** Stages where dough waits; kettle, boards and oven follow them in this order. */
const RESTING: readonly BatchStage[] = ['proof', 'chill', 'rack']
const WORKED: readonly BatchStage[] = ['kettle', 'boards', 'oven']

export function doughMisfits(dough: Dough): Misfit[] {
  const { id, route } = dough
  const [first] = route
  const twice = route.find((stage, index) => route.indexOf(stage) !== index)
  const starts = first !== undefined && RESTING.includes(first)
  const ends = route[route.length - 1] === 'oven'
  const ordered = route.every((stage, index) => index === 0 || rank(route[index - 1]) <= rank(stage))
  const order =
    'Proof, chill and rack first, then kettle, boards and oven in this order; any may be left out but the oven.'
  return [
    ...windowMisfits({ entity: 'dough', id }, dough.windows, 'windows/'),
    ...broken({ entity: 'dough', id }, [
      allergenTwice(dough.contains),
      ...weightRules(dough),
      [twice !== undefined, 'route', `The route goes through "${twice}" twice.`, 'Each stage once.'],
      [!ends, 'route', 'The route does not end in the oven.', '"oven" as its last stage.'],
      [!starts, 'route', 'The route does not begin where shaped pieces wait.', 'First "proof", "chill" or "rack".'],
      [starts && ends && !ordered, 'route', `The route is ${route.join(', ')}.`, order],
    ]),
  ]
}

function rank(stage: BatchStage | undefined): number {
  return stage === undefined || RESTING.includes(stage) ? -1 : WORKED.indexOf(stage)
}

export function toppingMisfits({ id, contains, madeOf }: Topping): Misfit[] {
  return broken({ entity: 'topping', id }, [allergenTwice(contains), madeOfTwice(madeOf)])
}

export function varietyMisfits(variety: Variety): Misfit[] {
  const { id, bakedOn, flip, topping, toppingId, avoids } = variety
  const twice = avoids.find((allergen, at) => avoids.indexOf(allergen) !== at)
  const untopped = `Topped with "${toppingId}", and "topping" says "none".`
  const stuck = 'Baked on a board, and not flipped: the flip is what takes pieces off their board.'
  const bare = 'Topped after the flip, and not flipped.'
  return [
    ...windowMisfits({ entity: 'variety', id }, variety.windows, 'windows/'),
    ...broken({ entity: 'variety', id }, [
      [bakedOn === 'board' && !flip, 'flip', stuck, 'Flipped, or baked on a "pan".'],
      [topping === 'none' && toppingId !== null, 'toppingId', untopped, 'No topping, or when it goes on.'],
      [twice !== undefined, 'avoids', `"${twice}" is named twice.`, 'Each allergen once.'],
      [topping === 'after-flip' && !flip, 'topping', bare, '"before-flip" or "none", or a flip.'],
    ]),
  ]
}

export function stationMisfits({ id, acts }: Station): Misfit[] {
  const twice = acts.find((act, index) => acts.indexOf(act) !== index)
  return broken({ entity: 'station', id }, [
    [twice !== undefined, 'acts', `"${twice}" is named twice.`, 'Each act once.'],
  ])
}

/** A floor's pieces follow from its boards, so that no bound of a field holds them. */
export function shelfMisfits({ id, pieces }: Shelf): Misfit[] {
  return broken({ entity: 'shelf', id }, [
    [pieces > SHELF_PIECES_MAX, 'pieces', `It holds ${pieces} pieces.`, `At most ${SHELF_PIECES_MAX}.`],
  ])
}

/** The float test says when a dough may be boiled, which is over by the changeover. */
export function stepMisfits({ id, list, kind }: Step): Misfit[] {
  const late = 'A float test in the changeover.'
  return broken({ entity: 'step', id }, [
    [kind === 'float-test' && list !== 'opening', 'kind', late, '"plain", or the list "opening".'],
  ])
}

export function mixerMisfits({ leastFlour, mostFlour }: Mixer): Misfit[] {
  const [least, most] = [weightText(leastFlour), weightText(mostFlour)]
  return broken({ entity: 'mixer', id: null }, [
    [
      milligrams(leastFlour) > milligrams(mostFlour),
      'leastFlour',
      `The least flour is ${least}, more than the most.`,
      `At most ${most}.`,
    ],
  ])
}
