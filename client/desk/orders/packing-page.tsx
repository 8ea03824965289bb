import type { OrdersAt } from '../../../shared-core/orders/due-on.ts'
import type { PackList } from '../../../shared-core/orders/packs.ts'
import { packList } from '../../../shared-core/orders/packs.ts'
import { inOrder } from '../../../shared-core/shop/in-order.ts'
import { DatesNav } from './dates-nav.tsx'
import { PackSheet } from './pack-sheet.tsx'
import type { OrdersParts } from './parts.ts'

export interface PackingProps extends OrdersParts {
  readonly date: string
}

/** What is packed for the van's runs of a day: looked at here, printed a run on each page. */
export function PackingPage(props: PackingProps) {
  const { state, shop, words, say, room, date } = props
  const at: OrdersAt = { date, noonMs: room.noonOf(date) }
  const lists = [
    ...inOrder(shop.runs).map(({ id }) => packList(state, id, at)),
    deliveredWithout(packList(state, null, at)),
  ]
  const some = lists.filter(({ stops }) => stops.length > 0)
  return (
    <>
      <DatesNav {...props} kind="packing" />
      {some.length === 0 ? (
        <p>{say.packing.none(words.times.date(date))}</p>
      ) : (
        <>
          <div class="desk-line desk-noprint">
            <button type="button" class="desk-strong" onClick={() => window.print()}>
              {say.packing.print}
            </button>
            <span class="desk-quiet">{say.packing.lead}</span>
          </div>
          {some.map((list) => (
            <PackSheet key={list.runId ?? 'none'} {...props} list={list} />
          ))}
        </>
      )}
    </>
  )
}

/** What is fetched at the counter is on the picking list. */
function deliveredWithout(list: PackList): PackList {
  const stops = list.stops.filter(({ order }) => order.way === 'delivery')
  const boxes = stops.reduce((sum, stop) => sum + stop.boxes, 0)
  return stops.length === list.stops.length ? list : { ...list, stops, boxes, pieces: [], mixedPieces: 0 }
}
