import type { Meaning, NamedMeaning, TillName } from '../../../shared-core/live/sales-import.ts'
import type { NamesWords } from '../../words/desk-sales.ts'
import type { Names } from '../../words/names.ts'

/** Names to show: those that nobody has said or all, that hold a text; the most sold first, ties by name. */
export function shownNames(
  names: readonly TillName[],
  { isAll, text }: { readonly isAll: boolean; readonly text: string },
): readonly TillName[] {
  const wanted = plain(text)
  return names
    .filter(({ name, meaning }) => (isAll || meaning === null) && plain(name).includes(wanted))
    .sort((one, other) => other.sold - one.sold || (one.name < other.name ? -1 : 1))
}

/** Without accents and case: keyboards of tills have neither. */
function plain(text: string): string {
  return text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase().trim()
}

/** How much of what was sold has names that nobody has said, from 0 to 1; 0 when nothing was sold. */
export function openShare(names: readonly TillName[]): number {
  const sold = (some: readonly TillName[]) => some.reduce((so, name) => so + Math.max(0, name.sold), 0)
  const all = sold(names)
  return all === 0 ? 0 : sold(names.filter(({ meaning }) => meaning === null)) / all
}

/** What saying yes to every suggestion comes to. */
export function suggestedFor(names: readonly TillName[]): readonly NamedMeaning[] {
  return names.flatMap(({ name, meaning, suggested }) =>
    meaning === null && suggested !== null ? [{ name, meaning: suggested }] : [],
  )
}

/** A meaning in words. @example "12 × Sesame" */
export function meaningTold(meaning: Meaning, say: NamesWords['meaning'], names: Names): string {
  switch (meaning.kind) {
    case 'variety':
      return say.variety(names.variety(meaning.varietyId), meaning.pieces)
    case 'pack':
      return say.pack(meaning.lines.map(({ varietyId, pieces }) => ({ name: names.variety(varietyId), pieces })))
    case 'unnamed':
      return say.unnamed(meaning.pieces, meaning.among?.map((id) => names.variety(id)) ?? null)
    case 'kitchen':
      return say.kitchen(meaning.varietyId === null ? null : names.variety(meaning.varietyId), meaning.pieces)
    case 'nothing':
      return say.nothing
  }
}
