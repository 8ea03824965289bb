import type { PackList, PackStop } from '../../../shared-core/orders/packs.ts'
import { clockOf } from './order-times.ts'
import { OrderWhat } from './order-what.tsx'
import type { PackingProps } from './packing-page.tsx'
import { detailsOfOrder } from './who.ts'

/** One run on one page of paper: when packing starts and the van leaves, its stops in order, boxes and tubs. */
export function PackSheet(props: PackingProps & { readonly list: PackList }) {
  const { list, date, shop, words, say } = props
  const { leavesAtMs, packFromMs, outByMs } = list
  const { packing } = say
  const name = list.runId === null ? packing.noRun : words.names.run(list.runId)
  const { columns } = packing
  return (
    <article class="orders-pack" aria-label={name}>
      <header>
        <h2>{name}</h2>
        <p>
          <span>{`${words.times.date(date)}, ${date.slice(0, 4)}`}</span>
          {outByMs !== null && <span>{packing.outBy(clockOf(outByMs, props))}</span>}
          {packFromMs !== null && <strong>{packing.packFrom(clockOf(packFromMs, props))}</strong>}
          {leavesAtMs !== null && <strong>{packing.leaves(clockOf(leavesAtMs, props))}</strong>}
          <span>{shop.profile.name}</span>
        </p>
      </header>
      <table>
        <thead>
          <tr>
            <th>{columns.done}</th>
            <th>{columns.stop}</th>
            <th>{columns.mark}</th>
            <th>{columns.what}</th>
            <th class="desk-number">{columns.boxes}</th>
          </tr>
        </thead>
        <tbody>
          {list.stops.map((stop) => (
            <Stop key={stop.order.id} {...props} stop={stop} />
          ))}
        </tbody>
      </table>
      <Together {...props} list={list} />
      <p>{packing.signed} ____________________</p>
    </article>
  )
}

function Stop(props: PackingProps & { readonly stop: PackStop }) {
  const { stop, state, words, say, book } = props
  const { order, atMs, boxes, isLate, tubs } = stop
  const details = detailsOfOrder(order, state, book)
  return (
    <tr>
      <td>
        <span class="orders-box" />
      </td>
      <td>
        {order.stop > 0 && <strong>{order.stop} · </strong>}
        {clockOf(atMs, props)}
        {isLate && <div class="desk-trouble">{say.packing.isLate}</div>}
      </td>
      <th scope="row">
        <strong>{order.mark}</strong>
        {details !== null && details.name !== '' && <div>{details.name}</div>}
        {details !== null && details.phone !== '' && <div>{details.phone}</div>}
        {!order.isPaid && <div>{say.said.notPaid}</div>}
      </th>
      <td class="orders-packed">
        <OrderWhat
          {...props}
          order={{ lines: order.lines, items: order.items.filter(({ steps }) => steps.length > 0) }}
          note={details?.note ?? ''}
        />
        {tubs.map(({ itemId, count }) => (
          <div key={itemId}>
            {count} × {words.names.menuItem(itemId)}
          </div>
        ))}
      </td>
      <td class="desk-number">{say.packing.boxes(boxes)}</td>
    </tr>
  )
}

/** What is fetched from the rack for the whole run. */
function Together({ list, words, say }: PackingProps & { readonly list: PackList }) {
  const { boxes, pieces, mixedPieces } = list
  const contents = [words.line.contents(pieces), ...(mixedPieces === 0 ? [] : [`${mixedPieces} ${say.said.mixed}`])]
  const told = contents.filter((part) => part !== '')
  return (
    <p class="orders-together">
      <strong>{`${say.packing.together}:`}</strong>
      <span>{[say.packing.boxes(boxes), ...told].join(' · ')}</span>
    </p>
  )
}
