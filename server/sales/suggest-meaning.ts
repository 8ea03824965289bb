import type { VarietyId } from '../../shared-core/ids.ts'
import type { Meaning } from '../../shared-core/live/sales-import.ts'
import { nearestWord } from '../../shared-core/shop/nearest-word.ts'
import type { Variety } from '../../shared-core/shop/shop.ts'

export type Named = Pick<Variety, 'id' | 'name' | 'size'>

/** Words on a till in English and Spanish. Common practice, no source. */
const BAGEL = /^(bagels?|bgls?|bagles?|roscas?)$/
const SIZES: { readonly [word: string]: Variety['size'] } = {
  mini: 'mini',
  minis: 'mini',
  large: 'large',
  grande: 'large',
  stick: 'stick',
  sticks: 'stick',
  regular: 'regular',
}
const FILLER: ReadonlySet<string> = new Set(
  'a an and the of with w on in fresh baked single each ea assorted mixed mix any choice toasted plus de del con y el la los las un una en surtido surtida mixto mixta unidad pack pk ct count pc pcs paquete piezas pzas'.split(
    ' ',
  ),
)
const SPREAD: ReadonlySet<string> = new Set(
  'spread schmear shmear cream cheese butter jam jelly pb peanut hummus lox queso crema mantequilla mermelada untable'.split(
    ' ',
  ),
)
const SANDWICH = /^(sandwich(es)?|sandwhich|sando|sub|blt|melt|burger|bocadillo|torta|sanduche|sandwiches)$/
const NOTHING =
  /^(coffee|tea|latte|espresso|cappuccino|americano|mocha|juice|soda|water|milk|cookie|muffin|tip|gift|card|delivery|bag|fee|cafe|te|jugo|refresco|agua|leche|propina|regalo|envio|bolsa)s?$/
/** Bags of these are pieces all the same. */
const MOST_PIECES = 144

/**
 * What a till's name probably means, from its words: the varieties' names, sizes and number words; slips of a letter or
 * two are forgiven. Null: nothing is like it.
 * @example suggestMeaning('Half Doz. Sesame Bagels', varieties) // { kind: 'variety', varietyId: 'sesame', pieces: 6 }
 */
export function suggestMeaning(name: string, varieties: readonly Named[]): Meaning | null {
  const { pieces, words, isBagel, isSandwich, size } = understand(name)
  if (isSandwich) return { kind: 'kitchen', varietyId: varietyAfterOn(name, varieties), pieces }
  const found = bestVariety(words, varieties, size)
  const rest = found?.rest ?? words
  const isRestSpread = rest.every((word) => SPREAD.has(word))
  if (found !== null && (rest.length === 0 || (isRestSpread && isBagel)))
    return { kind: 'variety', varietyId: found.id, pieces }
  const isPieces = isBagel || pieces > 1
  if (found === null && isPieces && isRestSpread) return { kind: 'unnamed', pieces, among: ofSize(varieties, size) }
  if (found === null && !isPieces && words.some((word) => NOTHING.test(word))) return { kind: 'nothing' }
  return null
}

/** What a name means that is a variety's own; nobody needs to say that. */
export function ownMeaning(name: string, varieties: readonly Named[]): Meaning | null {
  const text = plain(name)
  const same = varieties.filter((variety) => plain(variety.name) === text)
  const [only] = same
  return only === undefined || same.length > 1 ? null : { kind: 'variety', varietyId: only.id, pieces: 1 }
}

interface Understood {
  readonly pieces: number
  /** What is left when numbers, sizes and fillers are taken out. */
  readonly words: readonly string[]
  readonly isBagel: boolean
  readonly isSandwich: boolean
  readonly size: Variety['size'] | null
}

function understand(name: string): Understood {
  const text = plain(name)
  const pieces = piecesIn(text)
  const all = text
    .replaceAll(NUMBER_WORDS, ' ')
    .split(' ')
    .filter((word) => word !== '' && !/^\d+$/.test(word))
  const size = all.map((word) => SIZES[word]).find((one) => one !== undefined) ?? null
  const words = all.filter((word) => !FILLER.has(word) && !BAGEL.test(word) && SIZES[word] === undefined)
  return {
    pieces,
    words: words.filter((word) => !SANDWICH.test(word)),
    isBagel: all.some((word) => BAGEL.test(word)),
    isSandwich: all.some((word) => SANDWICH.test(word)),
    size,
  }
}

const DOZEN = '(?:dozens?|doz|dzn?|docenas?|doc)'
/** "2x onion", "onion x 2". */
const TIMES = '^\\d+ ?x\\b|\\bx ?\\d+$'
const NUMBER_WORDS = new RegExp(
  `${TIMES}|\\b(?:(?:half|1 2|media|bakers?|${'\\d+'}) )?(?:a )?${DOZEN}\\b|\\b\\d+ ?(?:pack|pk|ct|count|pcs?|pieces?|bagels?|piezas|pzas)?\\b|\\b(?:pack|bag|box|paquete|bolsa|caja) (?:of|de) \\d+\\b`,
  'g',
)

/** @example piecesIn('2x half dozen') // 12 */
export function piecesIn(text: string): number {
  const [times = '1'] = /\d+/.exec(new RegExp(TIMES).exec(text)?.[0] ?? '') ?? []
  return bounded(Number(times) * onceIn(text))
}

function onceIn(text: string): number {
  const dozen = new RegExp(`\\b(?:(half|1 2|media|bakers?|\\d+) )?(?:a )?${DOZEN}\\b`).exec(text)
  if (dozen !== null) {
    const [, how = '1'] = dozen
    if (/^(half|1 2|media)$/.test(how)) return 6
    return how.startsWith('baker') ? 13 : bounded(12 * Number(how))
  }
  const counted =
    /\b(\d+) ?(?:pack|pk|ct|count|pcs?|pieces?|bagels?|piezas|pzas)\b|\b(?:pack|bag|box|paquete|bolsa|caja) (?:of|de) (\d+)\b/.exec(
      text,
    )
  return bounded(Number(counted?.[1] ?? counted?.[2] ?? 1))
}

function bounded(pieces: number): number {
  return pieces >= 1 && pieces <= MOST_PIECES ? pieces : 1
}

/** The variety of which most words stand in the name; all of them must. */
function bestVariety(words: readonly string[], varieties: readonly Named[], size: Variety['size'] | null) {
  let best: { readonly id: VarietyId; readonly rest: readonly string[]; readonly worth: number } | null = null
  for (const variety of varieties) {
    const own = plain(variety.name)
      .split(' ')
      .filter((word) => !BAGEL.test(word) && !FILLER.has(word) && SIZES[word] === undefined)
    const found = own.map((word) => nearestWord(word, words))
    if (own.length === 0 || found.some((word) => word === null)) continue
    const rest = words.filter((word) => !found.includes(word))
    const exact = own.filter((word) => words.includes(word)).length
    const worth = own.length * 10 + exact - rest.length * 5 + (variety.size === (size ?? 'regular') ? 3 : 0)
    if (best === null || worth > best.worth) best = { id: variety.id, rest, worth }
  }
  return best
}

/** "Egg and cheese on sesame": what stands before is what goes into it. */
function varietyAfterOn(name: string, varieties: readonly Named[]): VarietyId | null {
  const [, after] = / (?:on|en) (.+)$/.exec(plain(name)) ?? []
  if (after === undefined) return null
  const { words, size } = understand(after)
  return bestVariety(words, varieties, size)?.id ?? null
}

function ofSize(varieties: readonly Named[], size: Variety['size'] | null): readonly VarietyId[] | null {
  const some = varieties.filter((variety) => variety.size === size).map(({ id }) => id)
  return size === null || some.length === 0 || some.length === varieties.length ? null : some
}

/** Small letters without accents and marks. */
function plain(text: string): string {
  return text
    .normalize('NFD')
    .replaceAll(/\p{M}/gu, '')
    .toLowerCase()
    .replaceAll('\u00bd', '1/2')
    .replaceAll('\u00d7', 'x')
    .replaceAll(/['\u2019]/g, '')
    .replaceAll(/[^\p{L}\p{N}]+/gu, ' ')
    .trim()
}
