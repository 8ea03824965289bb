import type { CareKind } from '../../shared-core/day/said.ts'
import { ALLERGEN_NAMES } from './allergens.ts'
import { listed } from './joined.ts'
import type { CareWords, ChangeWords, ShiftWords, StepWords } from './shift.ts'
import type { Words } from './words.ts'

const ALLERGENS = ALLERGEN_NAMES.en

export function enShift(words: Words): ShiftWords {
  return { steps: steps(words), change: change(words), care: care(words) }
}

function steps({ times }: Words): StepWords {
  return {
    opening: 'Opening',
    changeover: 'Changeover',
    toZero: (list, zeroAtMs, nowMs) => {
      const what = list === 'opening' ? 'First load' : 'Oven empty'
      if (zeroAtMs > nowMs) return `${what} ${times.within(zeroAtMs - nowMs)}`
      // The oven may well have been empty in time: only the first load is known not to have gone in.
      return list === 'opening' ? `${what} was due ${times.at(zeroAtMs)}` : `${what} ${times.by(zeroAtMs)}`
    },
    progress: (done, all) => `${done} of ${all} done`,
    allDone: 'all done',
    float: (name, dough) => `${name} ${dough}`,
    due: (due, nowMs) =>
      due.status === 'coming' ? `${times.at(due.atMs)}, ${times.when(due, nowMs)}` : times.when(due, nowMs),
    dueShort: (due, nowMs) => (due.status === 'coming' ? times.clock(due.atMs) : times.when(due, nowMs)),
    doneAt: (atMs) => `done ${times.clock(atMs)}`,
    lookAgain: (atMs) => `not ready, again ${times.clock(atMs)}`,
    dippedAnyway: 'boiled all the same',
    done: 'Done',
    passed: 'Passed',
    notReady: 'Not ready',
    lookIn: (minutes) => `look again in ${minutes} min`,
    give: 'Give',
    giveTo: (step) => `Who does: ${step}`,
    nobody: 'Nobody in particular',
    as: (person) => `as ${person}`,
    who: 'Who',
    nothing: 'Nothing is on this list now. Its steps are set up at the desk.',
    more: (count) => `${count} more`,
  }
}

function change({ times }: Words): ChangeWords {
  const shelfState: ChangeWords['shelfState'] = (state, freeAtMs) => {
    if (state === 'over') return 'over'
    if (state === 'bagels') return 'bagels'
    return freeAtMs === null ? 'emptying' : `emptying ${times.upTo(freeAtMs)}`
  }
  return {
    when: (fromMs, toMs, nowMs) => {
      if (nowMs < fromMs) return `Changeover ${times.within(fromMs - nowMs)}`
      return nowMs < toMs ? `Changeover ${times.since(fromMs)}` : 'After the changeover'
    },
    shelf: (name, state, freeAtMs) => `${name}: ${shelfState(state, freeAtMs)}`,
    several: (count, state) =>
      // "3 bagels" alone would be pieces.
      `${count} ${state === 'bagels' ? `${count === 1 ? 'takes' : 'take'} bagels` : shelfState(state, null)}`,
    shelves: 'Shelf by shelf',
    list: 'List',
    ovenEmpty: (atMs) => (atMs === null ? 'oven empty' : `oven empty ${times.at(atMs)}`),
    reading: (degrees, unit, atMs) => `${degrees} °${unit} ${times.at(atMs)}`,
    noReading: 'no reading yet',
    readings: 'Oven readings',
    wholeOven: 'Whole oven',
    typing: (place, unit) => `${place}, °${unit}`,
    type: 'Type it',
    save: 'Write down',
    wipeOut: 'Clear',
    typeFirst: 'type it first',
    over: 'Done with bagels',
    bagelsAgain: 'Bagels again',
    shelfState,
    slip: 'Move it',
    slipBy: (minutes) => `${Math.abs(minutes)} min ${minutes < 0 ? 'earlier' : 'later'}`,
    slipTo: (fromMs) => `changeover ${times.at(fromMs)}`,
    lastLoad: (atMs) => `last load in ${times.by(atMs)}`,
    loads: (loads, pieces) => {
      if (loads === 0) return 'no load more or fewer fits'
      const what = `${Math.abs(loads)} ${Math.abs(loads) === 1 ? 'load' : 'loads'} ${loads > 0 ? 'more' : 'fewer'}`
      return `${what}: ${Math.abs(pieces)} pieces`
    },
    planned: (more) => {
      if (more === 0) return ''
      const loads = `${Math.abs(more)} planned ${Math.abs(more) === 1 ? 'load' : 'loads'}`
      return more > 0 ? `${loads} more in time` : `${loads} too late`
    },
    slipped: (minutes) =>
      minutes === 0 ? 'at its usual time' : `${Math.abs(minutes)} min ${minutes < 0 ? 'earlier' : 'later'} than usual`,
    usual: 'Back to its usual time',
    none: 'No changeover: the shop has no second menu, or no day is open.',
    left: 'Left for the afternoon',
    noneAfter: 'No more bagels are baked today.',
    nothingLeft: 'Nothing is left for the afternoon.',
    withoutShelf: (loads) => `${loads} planned ${loads === 1 ? 'load has' : 'loads have'} no shelf`,
  }
}

function care({ times }: Words): CareWords {
  const boiled: CareWords['boiled'] = (pieces, sinceMs) =>
    sinceMs === null ? `${pieces} boiled` : `${pieces} boiled ${times.since(sinceMs)}`
  return {
    title: 'Kettle, boards and contact',
    care: (kind) => CARES[kind],
    boiled,
    reminder: (kind, pieces, sinceMs) => listed(CARES[kind], boiled(pieces, sinceMs)),
    every: (pieces) => `every ${pieces}`,
    boilsAgain: 'boils again',
    boilsIn: (atMs, nowMs) => `boils again ${times.within(atMs - nowMs)}`,
    inWater: 'In the water since its change',
    onBoards: 'On the boards since their wash',
    onOthers: 'On trays, peel and stone',
    places: { trays: 'Seed trays', peel: 'Peel', stone: 'Stone' },
    contact: (name, pieces) => `${name} ${pieces}`,
    contains: (contains) => `contains ${contains.map((allergen) => ALLERGENS[allergen]).join(', ')}`,
    brings: (allergens) => `brings ${allergens.map((allergen) => ALLERGENS[allergen]).join(', ')} to the water`,
    noContact: 'nothing on record',
    caution: 'By what was entered and tapped, no more: people here judge cross-contact.',
    usable: 'Boards usable today',
    cares: 'Care',
    board: { one: 'board', many: 'boards' },
  }
}

const CARES: { readonly [kind in CareKind]: string } = {
  topUp: 'Top up',
  malt: 'Malt',
  skim: 'Skim',
  change: 'Change the water',
  boiling: 'Boils now',
  washBoards: 'Wash boards',
  washTrays: 'Wash seed trays',
  washPeel: 'Wash peel',
  sweepStone: 'Sweep stone',
}
