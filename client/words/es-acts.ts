import type { LineAct } from '../../shared-core/shop/shop.ts'
import { capitalised, joined } from './joined.ts'
import { stuffOf } from './names.ts'
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
    timed: (due, nowMs) => `${name(due)}${due.status === 'late' ? ', ' : ' '}${times.when(due, nowMs)}`,
    following: (said) => `luego ${inSentence(said)}`,
    verb: (act) => VERBS[act],
  }
}

function actText(said: SaidAct, { names }: Speech, line: LineWords): string {
  const { act, shelfId, trays, pieces } = said
  const shelf = shelfId == null ? 'el horno' : names.shelf(shelfId)
  const what = stuffOf(said, names)
  switch (act) {
    case 'pull':
      return joined(VERBS.pull, trays == null ? countOf(pieces) : `${line.trays(trays)} de`, what)
    case 'dip':
    case 'board':
      return joined(VERBS[act], countOf(pieces), what)
    case 'lift':
      return VERBS[act]
    case 'load':
    case 'flip':
    case 'out':
      return joined(VERBS[act], shelf)
  }
}

function countOf(pieces: number | null | undefined): string {
  return pieces == null ? '' : String(pieces)
}
