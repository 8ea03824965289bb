import type { LineAct } from '../../shared-core/shop/shop.ts'
import { capitalised, joined } from './joined.ts'
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
    timed: (said, dueInMs) => `${name(said)}${dueInMs > -1_000 ? ' ' : ', '}${times.until(dueInMs)}`,
    following: (acts) => acts.map((said) => `then ${inSentence(said)}`).join(', '),
    verb: (act) => VERBS[act],
  }
}

function actText({ act, shelfId, doughId, trays, pieces, lines = [] }: SaidAct, { names }: Speech, line: LineWords) {
  const shelf = shelfId == null ? 'the oven' : names.shelf(shelfId)
  const dough = doughId == null ? '' : names.dough(doughId)
  const amount = trays != null ? line.trays(trays) : pieces != null ? String(pieces) : ''
  switch (act) {
    case 'pull':
    case 'dip':
      return joined(act, amount, dough)
    case 'lift':
      return joined(act, pieces == null ? '' : String(pieces), dough)
    case 'board':
      return joined(act, lines.length > 0 ? line.becomes(lines) : joined(amount, dough))
    case 'load':
    case 'flip':
      return joined(act, shelf)
    case 'out':
      return `out of ${shelf}`
  }
}
