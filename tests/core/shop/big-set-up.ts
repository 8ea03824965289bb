import { NAME_MAX } from '../../../shared-core/shop/set-up-limits.ts'
import type { SetUpFile } from '../../../shared-core/shop/set-up-schema.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'
import { shopOf } from './set-up-file-maker.ts'

/** A shop that strains every screen: many varieties, and every name as long as a set-up may have it. */
export function bigSetUp(varieties: number): Shop {
  return shopOf(bigSetUpFile(varieties))
}

/**
 * @param varieties how many, over five doughs; each name is `NAME_MAX` characters of wide words and differs from the
 *                  others at its beginning, since its end may be cut off
 */
export function bigSetUpFile(varieties: number): SetUpFile {
  return {
    format: 'boilboard set-up 1',
    shop: { name: longest('The Corner With the Wide Windows', 'shop'), zone: 'America/Chicago' },
    hours: {
      ovenReady: '04:30',
      open: '06:00',
      changeover: { from: '11:00', to: '12:00' },
      close: '15:00',
      secondMenu: longest('Mushroom Flatbreads', 'secondMenu'),
    },
    kettle: { pieces: 48, cycle: { seconds: 90 } },
    boards: { count: 60, pieces: 6, rewet: { minutes: 5 } },
    oven: {
      kind: 'shelves',
      shelves: numbers(12).map((n) => ({ id: `shelf-${n}`, name: longest(`W${n} Wide`, 'shelf'), pieces: 144 })),
    },
    doughs: numbers(5).map((n) => ({
      id: `dough-${n}`,
      name: longest(`${WORDS[n - 1]} dough`, 'dough'),
      route: ['proof', 'chill', 'rack', 'kettle', 'boards', 'oven'],
    })),
    varieties: numbers(varieties).map((n) => ({
      id: `variety-${n}`,
      name: longest(`${WORDS[(n - 1) % WORDS.length]} ${n}`, 'variety'),
      dough: `dough-${((n - 1) % 5) + 1}`,
      topping: n % 3 === 0 ? 'after-flip' : 'before-flip',
      priceCents: 150 + n,
      costCents: 40,
    })),
    stations: [
      { id: 'bench', name: longest('Bench by window', 'station'), acts: ['pull', 'board', 'load', 'flip', 'out'] },
      { id: 'kettle', name: longest('Wide kettle', 'station'), acts: ['dip', 'lift'] },
    ],
  }
}

const WORDS = ['Multigrain', 'Pumpernickel', 'Cranberry', 'Jalapeño', 'Everything', 'Mozzarella', 'Wholemeal']

export function longest(start: string, kind: keyof typeof NAME_MAX): string {
  return start.padEnd(NAME_MAX[kind], ' with more warm mushroom').slice(0, NAME_MAX[kind]).replace(/ $/, 'w')
}

function numbers(count: number): number[] {
  return Array.from({ length: count }, (_, at) => at + 1)
}
