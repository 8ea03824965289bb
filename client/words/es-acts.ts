import type { LineAct } from '../../shared-core/shop/shop.ts'
import { capitalised, joined } from './joined.ts'
import type { ActWords, LineWords, SaidAct, Speech, TimeWords } from './words.ts'

/**
 * Each act has a verb of its own, though a kitchen says "sacar" for three of them: across the room the first word must
 * be enough. Trays are brought (traer), pieces lifted from the pot (levantar), loads taken out of the oven (sacar).
 */
const VERBS: { readonly [act in LineAct]: string } = {
  pull: 'traer',
  dip: 'hervir',
  lift: 'levantar',
  board: 'pasar a tablas',
  load: 'cargar',
  flip: 'voltear',
  out: 'sacar',
}

export function esActs(speech: Speech, times: TimeWords, line: LineWords): ActWords {
  const inSentence = (said: SaidAct) => actText(said, speech, line)
  const name = (said: SaidAct) => capitalised(inSentence(said))
  return {
    name,
    inSentence,
    timed: (said, dueInMs) => `${name(said)}${dueInMs > -1_000 ? ' ' : ', '}${times.until(dueInMs)}`,
    following: (acts) => acts.map((said) => `luego ${inSentence(said)}`).join(', '),
    verb: (act) => VERBS[act],
  }
}

function actText({ act, shelfId, doughId, trays, pieces, lines = [] }: SaidAct, { names }: Speech, line: LineWords) {
  const verb = VERBS[act]
  const shelf = shelfId == null ? 'el horno' : names.shelf(shelfId)
  const dough = doughId == null ? '' : names.dough(doughId)
  const amount = trays != null ? line.trays(trays) : pieces != null ? String(pieces) : ''
  switch (act) {
    case 'pull':
    case 'dip':
      return joined(verb, amount, dough)
    case 'lift':
      return joined(verb, pieces == null ? '' : String(pieces), dough)
    case 'board':
      return joined(verb, lines.length > 0 ? line.becomes(lines) : joined(amount, dough))
    case 'load':
    case 'flip':
    case 'out':
      return joined(verb, shelf)
  }
}
