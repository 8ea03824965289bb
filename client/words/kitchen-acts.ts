import type { KitchenAct, KitchenActDue } from '../../shared-core/kitchen/kitchen-acts.ts'
import { enKitchenActs } from './en-kitchen-acts.ts'
import { esKitchenActs } from './es-kitchen-acts.ts'
import type { Words } from './words.ts'

/** How the next act of the kitchen is called out, alike on bench and wall. */
export interface KitchenActWords {
  /** Verb first, inside a sentence, from all of it to the shortest. @example ["put 2 Flatbread into 2: 41, 43", "into 2: 41, 43"] */
  act(said: SaidKitchenAct): readonly [string, string]
  /** Below an act that is on an allergy: cannot be missed. @example "ALLERGY: milk" */
  allergy(said: Pick<KitchenActDue, 'allergies'>): string
  /** Where there is no room for what it is: that there is one. */
  readonly allergyShort: string
  /** Marks of what went in together, each once. @example ["41", "45 ×3"] */
  marks(marks: readonly string[]): readonly string[]
}

/** `made`: what somebody has begun by hand is to be finished. */
export type SaidKitchenAct = Pick<KitchenActDue, 'items' | 'marks' | 'shelfId' | 'portionId' | 'trays'> & {
  readonly act: KitchenAct | 'made'
}

/** @example marksOnce(['41', '45', '45']) // ['41', '45 ×2'] */
export function marksOnce(marks: readonly string[]): readonly string[] {
  const counts = new Map<string, number>()
  for (const mark of marks) counts.set(mark, (counts.get(mark) ?? 0) + 1)
  return [...counts].map(([mark, count]) => (count === 1 ? mark : `${mark} ×${count}`))
}

export function kitchenActWords(words: Words): KitchenActWords {
  return words.language === 'en' ? enKitchenActs(words) : esKitchenActs(words)
}
