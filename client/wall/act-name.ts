import type { Line } from '../../shared-core/day/state.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import { capitalised } from '../words/joined.ts'
import type { SaidAct, Words } from '../words/words.ts'

/** What tells loads apart: their shelf; on one floor what is in them; on several floors both. */
export type Naming = 'shelf' | 'load' | 'shelf-and-load'

export type NamedAct = SaidAct & { readonly lines: readonly Line[] }

export function namingOf(shop: Shop | null): Naming {
  if (shop === null || shop.oven.kind !== 'hearth') return 'shelf'
  const floors = [...shop.shelves.values()].filter(({ retired }) => !retired)
  return floors.length > 1 ? 'shelf-and-load' : 'load'
}

/** An act inside a sentence. Several loads lie on a hearth's floor: there it names the first variety of its load. @example "flip Sesame 36" */
export function actInSentence(said: NamedAct, words: Words, naming: Naming): string {
  const first = firstOfLoad(said, words, naming)
  if (first === null) return words.acts.inSentence(said)
  const lead = naming === 'load' ? words.acts.verb(said.act) : words.acts.inSentence(said)
  return `${lead} ${first}`
}

/** @example "Flip Sesame 36" */
export function actName(said: NamedAct, words: Words, naming: Naming): string {
  return capitalised(actInSentence(said, words, naming))
}

/** What names a load besides its shelf; null where its shelf is enough, or nobody knows what is in it. */
export function firstOfLoad(
  { act, lines }: Pick<NamedAct, 'act' | 'lines'>,
  words: Words,
  naming: Naming,
): string | null {
  const [first] = lines
  const isOfLoad = act === 'load' || act === 'flip' || act === 'out'
  if (naming === 'shelf' || !isOfLoad || first === undefined) return null
  return `${words.names.variety(first.varietyId)} ${first.pieces}`
}
