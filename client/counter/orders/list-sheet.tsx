import { useMemo, useState } from 'preact/hooks'
import { piecesOf } from '../../../shared-core/line/lines.ts'
import { Key } from '../../parts/key.tsx'
import { PIECES_PER_RING } from '../../parts/rod-stack.ts'
import { topHeight } from '../counter-board.tsx'
import { keptForNobody } from '../kept-view.ts'
import { PageKeys } from '../page-keys.tsx'
import { rowsPage } from '../rows-page.ts'
import { Back, Wide } from '../small-key.tsx'
import { LyingRod } from './lying-rod.tsx'
import type { OrderRow } from './order-rows.ts'
import { found, orderRows } from './order-rows.ts'
import { OrdersFoot, TakeBackKey } from './orders-foot.tsx'
import type { OrdersProps } from './orders-parts.ts'
import type { RowRoom } from './row-text.ts'
import { rowText } from './row-text.ts'

/**
 * Open orders as rods that lie, in one reading order: those at risk first, with what would save them, then as they are
 * due. Only one page of them is painted, so that five hundred are as quick as five.
 */
export function ListSheet(props: OrdersProps) {
  const { state, sizes, board, book, say } = props
  const [typed, setTyped] = useState('')
  const [wanted, setPage] = useState(0)
  const { nowMs } = board.time
  const { risks } = board.orders
  const rows = useMemo(() => orderRows(state, nowMs, risks), [state, nowMs, risks])
  const shown = found(rows, typed, (order) => book.of(order))
  const { perPage, columns, room } = listRoom(props)
  const { items, page, pages } = rowsPage(shown, perPage, wanted)
  const { list } = say
  return (
    <section class="counter-sheet" role="dialog" aria-label={list.title}>
      <div class="counter-sheet-head counter-list-head">
        <h1>{list.title}</h1>
        <span class="counter-quiet">{list.summary(rows.length, rows.filter(({ risk }) => risk !== null).length)}</span>
        <input
          type="search"
          aria-label={list.search}
          placeholder={list.search}
          value={typed}
          autocomplete="off"
          onInput={(event) => {
            setTyped(event.currentTarget.value)
            setPage(0)
          }}
        />
      </div>
      <div class="counter-orders" style={{ gridTemplateColumns: `repeat(${columns}, minmax(0, 1fr))` }}>
        {shown.length === 0 && <p>{rows.length === 0 ? list.nothing : list.notFound}</p>}
        {items.map((row) => (
          <RowKey key={row.order.id} {...props} row={row} room={room} rodPx={Math.round(sizes.namePx * 1.05)} />
        ))}
      </div>
      <OrdersFoot {...props}>
        {pages > 1 && <PageKeys page={page} pages={pages} words={props.words} onPage={setPage} direction="across" />}
        <ListKeys {...props} />
      </OrdersFoot>
    </section>
  )
}

function ListKeys(props: OrdersProps) {
  const { state, board, words, say } = props
  const others = piecesOf(keptForNobody(state).flatMap(({ lines }) => lines))
  return (
    <>
      <Wide share={3}>
        <Key label={say.take.title} tone="strong" onPress={() => board.openSheet({ kind: 'take', orderId: null })} />
      </Wide>
      {others > 0 && (
        <Wide share={2}>
          <Key
            label={say.list.keptOther}
            detail={words.line.pieces(others)}
            onPress={() => board.openSheet({ kind: 'kept' })}
          />
        </Wide>
      )}
      <TakeBackKey {...props} share={3} />
      <Back label={words.counter.back} onPress={() => board.openSheet(null)} />
    </>
  )
}

type RowProps = OrdersProps & { readonly row: OrderRow; readonly room: RowRoom; readonly rodPx: number }

function RowKey({ row, room, rodPx, ...props }: RowProps) {
  const { say, live, book, board } = props
  const { order } = row
  const text = rowText(row, book.of(order)?.name ?? '', { say, live, room })
  const tone = row.risk !== null || row.when === 'late' ? 'late' : row.when === 'due' ? 'act' : 'plain'
  return (
    <Key tone={tone} name={text.spoken} onPress={() => board.openSheet({ kind: 'order', orderId: order.id })}>
      <span class="counter-order" data-order={order.id}>
        <span class="counter-order-head">
          <strong class="counter-order-mark">{order.mark}</strong>
          <span class="counter-order-due">{text.due}</span>
          <span class="counter-order-state">{text.state}</span>
        </span>
        {row.risk === null && <RowRods row={row} room={room} rodPx={rodPx} />}
        <span class="counter-order-line">{text.line}</span>
      </span>
    </Key>
  )
}

function RowRods({ row, room, rodPx }: Pick<RowProps, 'row' | 'room' | 'rodPx'>) {
  const { pieces, kept, items, made } = row
  const share = { pieces: items > 0 ? 0.6 : 1, items: pieces > 0 ? 0.35 : 1 }
  const widthPx = (part: keyof typeof share) => Math.round(room.widthPx * share[part])
  const rod = { there: 0, heightPx: rodPx }
  return (
    <span class="counter-order-rods">
      {pieces > 0 && (
        <LyingRod {...rod} kept={kept} missing={pieces - kept} perRing={PIECES_PER_RING} widthPx={widthPx('pieces')} />
      )}
      {items > 0 && <LyingRod {...rod} kept={made} missing={items - made} perRing={1} widthPx={widthPx('items')} />}
    </span>
  )
}

/** A row in sizes of a name: the mark's line, the rod, a line of words, and its edges. */
const ROW = 4.7
/** Two columns where a row still has room for its words. In sizes of a name. */
const COLUMN = 20
/** What a key takes of its width for its edges, stripes included. In millimetres of glass. */
const EDGES_MM = 14

function listRoom({ sizes, glass }: OrdersProps) {
  const { keyPx, gapPx, marginPx, namePx, quietPx, mmPx, isPhone } = sizes
  const rowPx = Math.max(keyPx, Math.ceil(namePx * ROW))
  const footPx = isPhone ? 2 * keyPx + gapPx : keyPx
  const headPx = isPhone ? keyPx + 2 * namePx : keyPx * 0.6
  const roomPx = glass.heightPx - topHeight(sizes) - headPx - footPx - 5 * marginPx
  const columns = isPhone || glass.widthPx < 2 * COLUMN * namePx ? 1 : 2
  const perColumn = Math.max(1, Math.floor((roomPx + gapPx) / (rowPx + gapPx)))
  const rowWidthPx = (glass.widthPx - 2 * marginPx - (columns - 1) * gapPx) / columns
  const room = { widthPx: Math.floor(rowWidthPx - EDGES_MM * mmPx), fontPx: quietPx }
  return { perPage: perColumn * columns, columns, room }
}
