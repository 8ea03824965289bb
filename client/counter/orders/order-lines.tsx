import { piecesOf } from '../../../shared-core/line/lines.ts'
import { itemIsBegun, itemIsMade } from '../../../shared-core/orders/item-steps.ts'
import type { Order } from '../../../shared-core/orders/order.ts'
import type { Pick, PickLine } from '../../../shared-core/orders/picks.ts'
import { PIECES_PER_RING } from '../../parts/rod-stack.ts'
import { LyingRod } from './lying-rod.tsx'
import type { OrdersProps } from './orders-parts.ts'

/** What an order's bag holds, line by line: what is kept, what lies there for it, what is missing. */
export function PickLines({ pick, ...props }: OrdersProps & { readonly pick: Pick }) {
  return (
    <>
      {pick.lines.map((line, index) => (
        // Lines have no id: their place in the order is what they are.
        <PickedLine key={index} {...props} picked={line} />
      ))}
    </>
  )
}

function PickedLine({ state, sizes, say, picked }: OrdersProps & { readonly picked: PickLine }) {
  const { line, kept, keep, missing } = picked
  const { one, said } = say
  const keptPieces = piecesOf(kept)
  const therePieces = piecesOf(keep)
  const texts = [
    ...(keptPieces > 0 ? [one.kept(keptPieces)] : []),
    ...(therePieces > 0 ? [one.there(therePieces)] : []),
    ...(missing > 0 ? [one.missing(missing)] : []),
    // A mixed line says what it is filled with.
    ...(line.varietyId === null && keptPieces + therePieces > 0 ? [one.filledWith([...kept, ...keep])] : []),
  ]
  return (
    <div class="counter-picked">
      <strong>{said.line(line, state.shop?.orders.dozenPieces ?? 12)}</strong>
      <LyingRod
        kept={keptPieces}
        there={therePieces}
        missing={missing}
        perRing={PIECES_PER_RING}
        widthPx={sizes.namePx * (sizes.isPhone ? 7 : 12)}
        heightPx={Math.round(sizes.namePx * 1.1)}
      />
      <span class={missing > 0 ? 'counter-picked-short' : undefined}>{texts.join(', ')}</span>
    </div>
  )
}

/** Things made to order, each with how far it is. What a guest must not get stands first, in a block of its own. */
export function ItemLines({ say, order }: OrdersProps & { readonly order: Order }) {
  const { one, said } = say
  return (
    <>
      {order.items.map((item) => {
        const { allergies } = item
        return (
          <div key={item.no} class="counter-picked">
            {allergies.length > 0 && <span class="counter-allergy">{said.allergy(allergies)}</span>}
            <strong>{said.item({ ...item, allergies: [] }, 1)}</strong>
            <span>{itemIsMade(item) ? one.made : itemIsBegun(item) ? one.begun : one.waiting}</span>
          </div>
        )
      })}
    </>
  )
}
