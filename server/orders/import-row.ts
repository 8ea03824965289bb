import type { VarietyId } from '../../shared-core/ids.ts'
import type { OrderColumn, OrderFault, OrderMapping } from '../../shared-core/live/orders-import.ts'
import type { Meaning, Told } from '../../shared-core/live/sales-import.ts'
import type { OrderWay } from '../../shared-core/orders/order.ts'
import type { AskedItem, AskedLine } from '../../shared-core/orders/order-commands.ts'
import { DETAIL_CHARACTERS_MAX, MARK_CHARACTERS_MAX } from '../../shared-core/orders/order-limits.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import { findNamed } from '../http/named.ts'
import type { Counted } from './import-count.ts'
import { countIn, times } from './import-count.ts'
import type { DueReader } from './import-due.ts'
import { orderFault } from './import-fault.ts'
import type { NameMeant } from './import-names.ts'
import { meantBy } from './import-names.ts'

/** What a row says of its order; null: nothing, as another row of it may. */
export interface RowSaid {
  readonly mark: string | null
  readonly name: string | null
  readonly phone: string | null
  readonly note: string | null
  readonly dueAtMs: number | null
  readonly way: OrderWay | null
  readonly isPaid: boolean | null
}

export interface RowRead {
  readonly line: number
  readonly cells: readonly string[]
  readonly ref: string | null
  readonly said: RowSaid
  readonly lines: readonly AskedLine[]
  readonly items: readonly AskedItem[]
  readonly guessed: readonly { readonly text: string; readonly meant: string }[]
  readonly faults: readonly Told<OrderFault>[]
}

export interface RowReaderParts {
  readonly mapping: OrderMapping
  readonly shop: Shop
  /** What names of the till mean, as the desk has said. */
  readonly meanings: ReadonlyMap<string, Meaning>
  readonly due: DueReader
}

/** As the command has it. */
const REF_CHARACTERS_MAX = 64

type Faults = Told<OrderFault>[]

/** Reads the rows of a file of orders, each by itself. */
export class OrderRowReader {
  readonly #parts: RowReaderParts
  /** A sheet says the same names again and again. */
  readonly #meant = new Map<string, NameMeant>()

  constructor(parts: RowReaderParts) {
    this.#parts = parts
  }

  read(cells: readonly string[], line: number): RowRead {
    const { due } = this.#parts
    const faults: Faults = []
    const short = (column: OrderColumn, most: number) => this.#short(cells, column, most, faults)
    const ref = short('ref', REF_CHARACTERS_MAX)
    const said: RowSaid = {
      mark: this.#mark(cells, faults),
      name: short('name', DETAIL_CHARACTERS_MAX.name),
      phone: short('phone', DETAIL_CHARACTERS_MAX.phone),
      note: short('note', DETAIL_CHARACTERS_MAX.note),
      dueAtMs: due.read(this.#cell(cells, 'dueDate'), this.#cell(cells, 'dueTime'), faults),
      way: this.#way(cells, faults),
      isPaid: this.#yes(cells, 'paid', faults),
    }
    return { line, cells, ref, said, ...this.#ordered(cells, faults), faults }
  }

  /** What the row orders: pieces of a variety, or something made to order. */
  #ordered(cells: readonly string[], faults: Faults): Pick<RowRead, 'lines' | 'items' | 'guessed'> {
    const [variety, item] = [this.#cell(cells, 'variety'), this.#cell(cells, 'item')]
    const nothing = { lines: [], items: [], guessed: [] }
    if (variety === '' && item === '') return nothing
    const { mapping } = this.#parts
    const count = countIn(
      {
        dozens: this.#cell(cells, 'dozens'),
        pieces: this.#cell(cells, 'pieces'),
        columns: mapping.columns,
        decimal: mapping.decimal,
      },
      faults,
    )
    if (count === null) return nothing
    if (item !== '') return { ...nothing, items: this.#item({ item, variety, count }, faults) }
    return this.#lines(cells, { variety, count }, faults)
  }

  #lines(
    cells: readonly string[],
    { variety, count }: { readonly variety: string; readonly count: Counted },
    faults: Faults,
  ): Pick<RowRead, 'lines' | 'items' | 'guessed'> {
    const { mapping, shop } = this.#parts
    const nothing = { lines: [], items: [], guessed: [] }
    const meant = this.#meaningOf(variety)
    if (meant.kind === 'nothing') return nothing
    if (meant.kind === 'item') return { ...nothing, items: this.#item({ item: variety, variety: '', count }, faults) }
    if (meant.kind === 'unknown') {
      faults.push(orderFault('no-variety', { text: variety, column: columnOf(mapping, 'variety'), near: meant.near }))
      return nothing
    }
    const sliced = this.#yes(cells, 'sliced', faults) ?? false
    const bagged = this.#yes(cells, 'bagged', faults) ?? false
    const lines = meant.lines.map(({ pieces: each, ...line }) => ({ ...line, ...times(count, each), sliced, bagged }))
    const names = meant.lines.map(({ varietyId, without }) => nameOf(shop, varietyId, without))
    return {
      ...nothing,
      lines,
      guessed: meant.guessed === null ? [] : [{ text: meant.guessed, meant: names.join(', ') }],
    }
  }

  #item(
    { item, variety, count }: { readonly item: string; readonly variety: string; readonly count: Counted },
    faults: Faults,
  ): readonly AskedItem[] {
    const { mapping, shop } = this.#parts
    const found = findNamed(shop.menu, item)
    if (found === null) {
      const meant = this.#meaningOf(item)
      const near = meant.kind === 'unknown' ? meant.near : ''
      faults.push(orderFault('no-item', { text: item, column: columnOf(mapping, 'item'), near }))
      return []
    }
    const bagel = variety === '' ? null : findNamed(shop.varieties, variety)
    if (variety !== '' && bagel === null) {
      faults.push(orderFault('no-variety', { text: variety, column: columnOf(mapping, 'variety'), near: '' }))
      return []
    }
    if (found.onBagel && bagel === null) {
      faults.push(orderFault('no-bagel', { item: found.name }))
      return []
    }
    const of = { toasted: false, without: [], more: [], allergies: [] }
    const varietyId = found.onBagel ? (bagel?.id ?? null) : null
    const all = count.dozens * shop.orders.dozenPieces + count.pieces
    return [{ itemId: found.id, varietyId, ...of, times: all }]
  }

  #meaningOf(name: string): NameMeant {
    const { shop, meanings } = this.#parts
    const meant = this.#meant.get(name) ?? meantBy(name, shop, meanings)
    this.#meant.set(name, meant)
    return meant
  }

  #mark(cells: readonly string[], faults: Faults): string | null {
    const text = this.#cell(cells, 'mark')
    if (text.length <= MARK_CHARACTERS_MAX) return text === '' ? null : text
    const column = columnOf(this.#parts.mapping, 'mark')
    faults.push(orderFault('mark-too-long', { text, column, most: MARK_CHARACTERS_MAX }))
    return null
  }

  #short(cells: readonly string[], column: OrderColumn, most: number, faults: Faults): string | null {
    const text = this.#cell(cells, column)
    if (text.length <= most) return text === '' ? null : text
    faults.push(orderFault('too-long', { column: columnOf(this.#parts.mapping, column), most }))
    return null
  }

  #way(cells: readonly string[], faults: Faults): OrderWay | null {
    const text = this.#cell(cells, 'way')
    if (text === '') return null
    if (DELIVERY.test(text)) return 'delivery'
    if (PICK_UP.test(text)) return 'pickUp'
    faults.push(orderFault('no-way', { text, column: columnOf(this.#parts.mapping, 'way') }))
    return null
  }

  #yes(cells: readonly string[], column: OrderColumn, faults: Faults): boolean | null {
    const text = this.#cell(cells, column)
    if (text === '') return null
    if (YES.test(text)) return true
    if (NO.test(text)) return false
    faults.push(orderFault('no-yes', { text, column: columnOf(this.#parts.mapping, column) }))
    return null
  }

  #cell(cells: readonly string[], column: OrderColumn): string {
    const index = this.#parts.mapping.columns[column]
    return index === null ? '' : (cells[index] ?? '').replaceAll(/\s+/g, ' ').trim()
  }
}

/** Counted from 1, as people do; 0: no column has it. */
export function columnOf({ columns }: OrderMapping, column: OrderColumn): number {
  return (columns[column] ?? -1) + 1
}

/** Words in English and Spanish. Common practice, no source. */
const DELIVERY = /deliver|reparto|env[ií]o|domicilio|entregar?\b|entrega a|^van$|bring/i
const PICK_UP = /pick|collect|fetch|recog|counter|mostrador|pasa|llevar|to go|take ?out/i
const YES =
  /^(y|yes|s[ií]?|true|x|1|v|ok|✓|✔|paid|pagad[oa]|prepaid|sliced?|rebanad[oa]s?|cortad[oa]s?|bag(ged)?|embolsad[oa]s?|en bolsas?)$/i
const NO = /^(n|no|false|0|-|–|unpaid|due|no pagad[oa]|sin pagar|pendiente|unsliced|whole|enter[oa]s?|none|sin)$/i

function nameOf(shop: Shop, varietyId: VarietyId | null, without: readonly VarietyId[]): string {
  const name = (id: VarietyId) => shop.varieties.get(id)?.name ?? id
  if (varietyId !== null) return name(varietyId)
  return without.length === 0 ? 'mixed' : `mixed, no ${without.map(name).join(', ')}`
}
