import type { Act } from '../../../shared-core/day/commands.ts'
import type { Line } from '../../../shared-core/day/state.ts'
import { doughId, shelfId, varietyId } from '../../../shared-core/ids.ts'
import type { Language, OvenKind, Shop } from '../../../shared-core/shop/shop.ts'
import { ALL_STATIONS, dough, PEOPLE, shelf, shopWith, table, variety } from '../../core/support/shop.ts'
import { shiftShop } from './shift-shop.ts'
import type { ShopServer } from './shop-server.ts'

/** As long as the set-up allows, as shops name things; one of each is a single word. */
const VARIETIES = [
  'Sun-dried Tomato & Basil',
  'Cinnamon Raisin & Walnut',
  'Everythingandthensomemore',
  'Pumpernickel with Onions',
  'Asiago and Roast Garlic',
  'Jalapeño Cheddar Special',
]
const DOUGHS = ['Plain', 'Pumpernickel sourdough', 'Cinnamonraisinwalnutdou', 'Whole wheat and honey', 'Rye', 'Egg']

export interface Crowd {
  readonly varieties: number
  readonly shelves: number
  readonly language: Language
  readonly kind?: OvenKind
  /** Names of shelves as long as they may be; else numbers. */
  readonly hasLongShelves?: boolean
}

/** A shop that fills every screen to its limits, in the hour before its changeover, whatever the machine's clock says. */
export function crowdedShop({ varieties, shelves, language, kind = 'shelves', hasLongShelves = false }: Crowd): Shop {
  const base = shopWith()
  const { profile, hours } = shiftShop({ language, changeoverIn: 50 })
  // No two may be called the same: each ends in a number of its own.
  const nameOf = (n: number) => `${(VARIETIES[n % VARIETIES.length] ?? '').slice(0, 21).trimEnd()} ${n + 10}`
  return shopWith({
    profile,
    hours,
    oven: { ...base.oven, kind },
    stations: table(ALL_STATIONS),
    people: table(PEOPLE),
    shelves: table(
      Array.from({ length: shelves }, (_, n) =>
        shelf({ id: `s${n}`, order: n, name: hasLongShelves ? `Deck-${n + 101}` : String(n + 1), pieces: 72 }),
      ),
    ),
    doughs: table(DOUGHS.map((name, n) => dough({ id: `d${n}`, order: n, name }))),
    varieties: table(
      Array.from({ length: varieties }, (_, n) =>
        variety({ id: `v${n}`, order: n, name: nameOf(n), doughId: doughId(`d${n % DOUGHS.length}`) }),
      ),
    ),
  })
}

const MINUTE_MS = 60_000

/** Dough everywhere, the kettle full, all shelves but two at work; of these some due, some late, some just in. */
export async function crowd(server: ShopServer, { shelves, varieties }: Crowd): Promise<void> {
  const line = (n: number, pieces: number): Line => ({ varietyId: varietyId(`v${n % varieties}`), pieces })
  for (let n = 0; n < DOUGHS.length; n++) {
    const id = doughId(`d${n}`)
    for (const stage of ['chill', 'rack', 'proof'] as const) {
      const pieces = stage === 'proof' ? 60 : 480
      await ago(server, 100, { type: 'carryIn', doughId: id, varietyId: null, pieces, stage, sinceMs: null })
    }
  }
  const held = (n: number) => [line(n, 36), line(n + 5, 18), line(n + 9, 12)]
  const loads = Array.from({ length: shelves + 6 }, (_, n) => ({
    shelfId: n < shelves ? shelfId(`s${n}`) : null,
    inAtMs: null,
    lines: held(n),
  }))
  await ago(server, 90, { type: 'setLoadList', loads })
  const planned = [...(await server.state()).planned.values()].sort((one, other) => one.order - other.order)
  for (const [n, { id, lines }] of planned.slice(2, shelves).entries()) {
    const shelf = shelfId(`s${n + 2}`)
    await ago(server, [22, 12, 4, 2, 1][n % 5] ?? 0, { type: 'load', shelfId: shelf, plannedId: id, lines })
  }
  const oldest = [...(await server.state()).loads.values()].filter((_, n) => n % 5 < 2)
  for (const load of oldest) await ago(server, 5, { type: 'flip', loadId: load.id })
  const dip = { type: 'dip', varietyId: null, pieces: 36 } as const
  await ago(server, 2, { ...dip, doughId: doughId('d2') })
  await ago(server, 0.3, { ...dip, doughId: doughId('d1') })
}

/** An act tapped so many minutes ago, on a screen that had no contact. */
async function ago(server: ShopServer, minutes: number, act: Act): Promise<void> {
  const tapped = { ...act, tappedAtMs: Date.now() - minutes * MINUTE_MS }
  await server.act(tapped, 'bench')
}
