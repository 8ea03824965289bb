import type { LineAct } from '../../shared-core/shop/shop.ts'
import { capitalised, joined } from './joined.ts'
import { stuffOf } from './names.ts'
import type { ActWords, LineWords, SaidAct, Speech, TimeWords } from './words.ts'

const VERBS: { readonly [act in LineAct]: string } = {
  pull: 'pull',
  dip: 'dip',
  lift: 'lift',
  board: 'board',
  load: 'load',
  flip: 'flip',
  out: 'out',
}

export function enActs(speech: Speech, times: TimeWords, line: LineWords): ActWords {
  const inSentence = (said: SaidAct) => actText(said, speech, line)
  const name = (said: SaidAct) => capitalised(inSentence(said))
  return {
    name,
    inSentence,
    timed: (due, nowMs) => `${name(due)}${due.status === 'late' ? ', ' : ' '}${times.when(due, nowMs)}`,
    following: (said) => `then ${inSentence(said)}`,
    verb: (act) => VERBS[act],
  }
}

function actText(said: SaidAct, { names }: Speech, line: LineWords): string {
  const { act, shelfId, trays, pieces } = said
  const shelf = shelfId == null ? 'the oven' : names.shelf(shelfId)
  const what = stuffOf(said, names)
  switch (act) {
    case 'pull':
      return joined('pull', trays == null ? countOf(pieces) : line.trays(trays), what)
    case 'dip':
    case 'board':
      return joined(act, countOf(pieces), what)
    case 'lift':
      return act
    case 'load':
    case 'flip':
      return joined(act, shelf)
    case 'out':
      return `out of ${shelf}`
  }
}

function countOf(pieces: number | null | undefined): string {
  return pieces == null ? '' : String(pieces)
}
