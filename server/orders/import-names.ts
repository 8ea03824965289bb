import type { MenuItemId, VarietyId } from '../../shared-core/ids.ts'
import type { Meaning } from '../../shared-core/live/sales-import.ts'
import { inUse } from '../../shared-core/shop/in-order.ts'
import { nearestWord } from '../../shared-core/shop/nearest-word.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import { findNamed } from '../http/named.ts'
import { suggestMeaning } from '../sales/suggest-meaning.ts'

/** What a name in a file of orders means. `guessed`: by its words, which somebody should look at. */
export type NameMeant =
  /** So many of one, times what the row says. */
  | { readonly kind: 'pieces'; readonly lines: readonly MeantLine[]; readonly guessed: string | null }
  | { readonly kind: 'item'; readonly itemId: MenuItemId }
  /** The desk has said that it is none of the shop's pieces: coffee, a gift card. */
  | { readonly kind: 'nothing' }
  | { readonly kind: 'unknown'; readonly near: string }

export interface MeantLine {
  readonly varietyId: VarietyId | null
  readonly without: readonly VarietyId[]
  readonly pieces: number
}

const MIXED =
  /^(?:bagels? )?(?:a )?(?:mix(?:ed)?|assort(?:ed|ment)|any|variety|surtid[oa]s?|variad[oa]s?|mixt[oa]s?)\b(?: bagels?)?(.*)$/i
const WITHOUT = /^[\s,;:(–-]*(?:but )?(?:no|not|without|except|sin|menos|excepto)\b/i

/**
 * Finds what a name means: a variety, "mixed, no raisin", a till's name as the desk has said it, something on the menu,
 * or what its words are like.
 */
export function meantBy(text: string, shop: Shop, meanings: ReadonlyMap<string, Meaning>): NameMeant {
  const variety = findNamed(shop.varieties, text)
  if (variety !== null) return { kind: 'pieces', lines: [oneOf(variety.id)], guessed: null }
  const mixed = mixedIn(text, shop)
  if (mixed !== null) return mixed
  const said = meanings.get(text)
  if (said !== undefined) return ofMeaning(said, shop, null)
  const item = findNamed(shop.menu, text)
  if (item !== null) return { kind: 'item', itemId: item.id }
  const like = suggestMeaning(text, inUse(shop.varieties))
  if (like !== null && like.kind !== 'nothing' && like.kind !== 'kitchen') return ofMeaning(like, shop, text)
  const names = [...inUse(shop.varieties), ...inUse(shop.menu)].map(({ name }) => name)
  return { kind: 'unknown', near: nearestWord(text, names) ?? '' }
}

/** @example of "mixed, no raisin or onion": any variety but these two; null: it is not about a mix */
function mixedIn(text: string, shop: Shop): NameMeant | null {
  const found = MIXED.exec(text.trim())
  if (found === null) return null
  const rest = (found[1] ?? '').trim()
  if (rest === '') return { kind: 'pieces', lines: [{ varietyId: null, without: [], pieces: 1 }], guessed: null }
  if (!WITHOUT.test(rest)) return null
  const names = rest
    .split(/[,;/)(]|\b(?:no|not|without|except|sin|menos|excepto|but|and|or|y|o|ni)\b/i)
    .map((name) => name.trim())
    .filter((name) => name !== '')
  const without = names.map((name) => varietiesLike(name, shop))
  const unknown = without.findIndex((ids) => ids.length === 0)
  if (unknown !== -1) {
    const known = inUse(shop.varieties).map(({ name }) => name)
    return { kind: 'unknown', near: nearestWord(names[unknown] ?? '', known) ?? '' }
  }
  const ids = [...new Set(without.flat())]
  return { kind: 'pieces', lines: [{ varietyId: null, without: ids, pieces: 1 }], guessed: text }
}

/** Who says "no raisin" wants no Cinnamon raisin either. */
function varietiesLike(name: string, shop: Shop): readonly VarietyId[] {
  const own = findNamed(shop.varieties, name)
  if (own !== null) return [own.id]
  const word = new RegExp(`\\b${name.replaceAll(/[^\p{L}\p{N} ]/gu, '.')}`, 'iu')
  const holding = inUse(shop.varieties).filter((variety) => word.test(variety.name))
  if (holding.length > 0) return holding.map(({ id }) => id)
  const like = suggestMeaning(name, inUse(shop.varieties))
  return like?.kind === 'variety' ? [like.varietyId] : []
}

function ofMeaning(meaning: Meaning, shop: Shop, guessed: string | null): NameMeant {
  switch (meaning.kind) {
    case 'variety':
      return { kind: 'pieces', lines: [{ ...oneOf(meaning.varietyId), pieces: meaning.pieces }], guessed }
    case 'pack':
      return {
        kind: 'pieces',
        lines: meaning.lines.map(({ varietyId, pieces }) => ({ ...oneOf(varietyId), pieces })),
        guessed,
      }
    case 'unnamed': {
      const { among, pieces } = meaning
      const without = among === null ? [] : inUse(shop.varieties).flatMap(({ id }) => (among.includes(id) ? [] : [id]))
      return { kind: 'pieces', lines: [{ varietyId: null, without, pieces }], guessed }
    }
    case 'kitchen':
      return { kind: 'unknown', near: '' }
    case 'nothing':
      return { kind: 'nothing' }
  }
}

function oneOf(varietyId: VarietyId): MeantLine {
  return { varietyId, without: [], pieces: 1 }
}
