import type { Prospect } from '../../shared-core/stock/prospect.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { ALLERGEN_NAMES } from './allergens.ts'
import type { ChangeoverWords, KettleWords, OvenWords, RodsWords, StepsWords, TodayWords } from './desk-today.ts'
import type { Words } from './words.ts'

export function enToday(words: Words): TodayWords {
  const { times } = words
  return {
    ruler: {
      lastLoad: (atMs) => `last load in ${times.by(atMs)}`,
      lastLoadGone: 'no more loads',
      closedToday: 'closed today',
      changeover: 'changeover',
      tooLate: (atMs) => `load ${times.clock(atMs)} too late`,
      spoken: 'The day',
      closedDay: 'The shop is closed today.',
    },
    steps: steps(words),
    changeover: changeover(words),
    oven: oven(words),
    kettle: kettle(words),
    rods: rods(words),
  }
}

function steps({ times }: Words): StepsWords {
  return {
    opening: 'Opening list',
    changeover: 'Changeover list',
    openingHead: (atMs, done, all) => `Counted back from the first load, ${times.at(atMs)}. ${done} of ${all} done.`,
    changeoverHead: (atMs, done, all) => `Counted back from the oven empty, ${times.at(atMs)}. ${done} of ${all} done.`,
    nothing: 'Nothing stands on the list now.',
    floatTest: (dough) => `Float test: ${dough}`,
    due: (atMs) => times.clock(atMs),
    status: { due: 'now', late: 'late' },
    done: (atMs, person) => `done ${times.at(atMs)}${person === '' ? '' : `, ${person}`}`,
    who: (step) => `Who does it: ${step}`,
    nobody: 'nobody yet',
    doIt: 'Done',
    passed: 'It floats',
    notReady: 'Not ready',
    lookAgainIn: (minutes) => `in ${minutes} min`,
    lookAgain: 'look again',
    foundReady: 'floats',
    foundNotReady: (atMs) => `not ready, look again ${times.at(atMs)}`,
    dippedAnyway: 'was not ready, dipped all the same',
  }
}

function changeover({ times, line }: Words): ChangeoverWords {
  return {
    title: 'Changeover',
    plan: (fromMs, toMs, menu) =>
      `Oven empty ${times.by(fromMs)}${menu === null ? '' : `; ${menu} from ${times.clock(toMs)}`}.`,
    slipped: (minutes) => `That is ${Math.abs(minutes)} min ${minutes > 0 ? 'later' : 'earlier'} than usual.`,
    over: 'No bagels are baked after this, unless a shelf takes them again.',
    emptyAt: (atMs) => `As planned, the last load comes out ${times.at(atMs)}.`,
    nothingInside: 'Nothing is in the oven and nothing is planned.',
    later: '15 min later',
    earlier: '15 min earlier',
    asUsual: 'As usual again',
    wouldBe: ({ fromMs, lastLoadInByMs }) =>
      `Oven empty ${times.by(fromMs)}, last load in ${times.by(lastLoadInByMs)}.`,
    plannedMore: (loads) =>
      loads > 0
        ? `${loads} planned ${loads === 1 ? 'load is' : 'loads are'} then in time.`
        : `${-loads} planned ${loads === -1 ? 'load is' : 'loads are'} then too late.`,
    loadsMore: (loads, pieces) =>
      `Room for ${Math.abs(loads)} ${Math.abs(loads) === 1 ? 'load' : 'loads'} (${line.pieces(Math.abs(pieces))}) ${loads > 0 ? 'more' : 'fewer'}.`,
    nothingMoves: 'The loads stay as they are.',
    columns: { shelf: 'shelf', state: 'now', free: 'free' },
    state: { bagels: 'takes bagels', emptying: 'last load in', over: 'done with bagels' },
    overHere: 'Done with bagels',
    bagelsAgain: 'Bagels again',
    left: (lines) => `For the afternoon: ${line.contents(lines)}.`,
    nothingLeft: 'Nothing is left for the afternoon.',
    withoutShelf: (loads) =>
      `${loads} planned ${loads === 1 ? 'load has' : 'loads have'} no shelf left that takes bagels.`,
  }
}

function oven({ times }: Words): OvenWords {
  return {
    title: 'Oven readings',
    whole: 'The oven',
    reading: (degrees, unit, atMs) => `${degrees} °${unit} ${times.at(atMs)}`,
    none: 'no reading today',
    degrees: (where, unit) => `${where}: degrees ${unit}`,
    record: 'Write down',
    hint: 'Read it off the oven’s own gauge; nobody needs to reach in.',
  }
}

function kettle({ times, line }: Words): KettleWords {
  return {
    title: 'Kettle, boards and contact',
    care: {
      topUp: 'Top up',
      malt: 'Malt',
      skim: 'Skim',
      change: 'Change the water',
      boiling: 'Boils now',
      washBoards: 'Wash boards',
      washTrays: 'Wash seed trays',
      washPeel: 'Wash peel',
      sweepStone: 'Sweep stone',
    },
    since: (boiled, every) => `${boiled} of ${every} pieces since`,
    due: 'due',
    lastAt: (atMs) => `last ${times.at(atMs)}`,
    boilsAgain: (atMs) => `Cold water went in: boils again about ${times.clock(atMs)}.`,
    touched: {
      kettle: 'In the kettle’s water since it was changed',
      boards: 'On boards since they were washed',
      trays: 'In seed trays since they were washed',
      peel: 'On the peel since it was washed',
      stone: 'On the stone since it was swept',
    },
    nothing: {
      kettle: 'Nothing known since the water was changed.',
      boards: 'Nothing known since the boards were washed.',
      trays: 'Nothing known since the seed trays were washed.',
      peel: 'Nothing known since the peel was washed.',
      stone: 'Nothing known since the stone was swept.',
    },
    contactHint:
      'It follows from what was entered and tapped. Contact that nobody entered is judged by the people here.',
    allergen: ALLERGEN_NAMES.en,
    contact: (name, pieces, allergens) =>
      allergens.length === 0 ? `${name} ${pieces}` : `${name} ${pieces} (${allergens.join(', ')})`,
    boards: 'Boards usable today',
    boardsOf: (count) => `of ${line.boards(count)}`,
    usable: 'Set boards',
  }
}

function rods({ times }: Words): RodsWords {
  return {
    title: 'What is left',
    none: 'Nothing is for sale or on the way.',
    known: { counted: 'counted', swept: 'counted', baked: 'baked', sold: 'sold' },
    cooling: (pieces) => `${pieces} cooling`,
    kept: (pieces) => `${pieces} kept`,
    dayOld: (pieces) => `${pieces} day-old`,
    coming: (pieces, atMs) => `${pieces} ${times.at(atMs)}`,
    spoken: (name, pieces) => `${name}: ${pieces} for sale`,
    gone: (atMs) => `gone ${times.since(atMs)}`,
    ahead: (prospect, moreAtMs) => aheadText(prospect, moreAtMs, times),
  }
}

function aheadText(prospect: Prospect, moreAtMs: EpochMs | null, times: Words['times']): string {
  const { by, goneAtMs, isGap, doubt, between, lasts, leftAtClose } = prospect
  const marked = (text: string) => (by === 'guess' ? `${text}, a guess` : text)
  if (goneAtMs !== null) {
    if (isGap && moreAtMs !== null) return marked(`none ${times.clock(goneAtMs)}–${times.clock(moreAtMs)}`)
    const text = `gone about ${times.clock(goneAtMs)}`
    if (between === null || between.toMs === null) return marked(text)
    return marked(`${text} (${times.clock(between.fromMs)} to ${times.clock(between.toMs)})`)
  }
  if (doubt !== null) {
    return marked(
      doubt.before === 'more' ? 'may run out before more comes' : `may run out from ${times.clock(doubt.fromMs)} on`,
    )
  }
  if (!lasts) return ''
  return marked(leftAtClose === null ? 'lasts to close' : `lasts to close, about ${leftAtClose} left`)
}
