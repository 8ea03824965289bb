import { useState } from 'preact/hooks'
import type { MenuItemId } from '../../../shared-core/ids.ts'
import { portionsNow } from '../../../shared-core/kitchen/portions-now.ts'
import { stillMade } from '../../../shared-core/kitchen/still-made.ts'
import { inUse } from '../../../shared-core/shop/in-order.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'
import { Key } from '../../parts/key.tsx'
import { FAST_TAP_MS } from '../../parts/press-guard.ts'
import { rulerNow } from '../../parts/ruler-of-day.ts'
import { PageKeys } from '../page-keys.tsx'
import { rowsPage } from '../rows-page.ts'
import { LyingRod } from './lying-rod.tsx'
import type { OrdersProps } from './orders-parts.ts'
import type { Slip } from './slip.ts'
import { withThing } from './slip.ts'
import type { ThingMode } from './thing-options.tsx'
import { OptionArea, OptionKeys } from './thing-options.tsx'

export interface ThingsProps extends OrdersProps {
  readonly shop: Shop
  readonly slip: Slip
  readonly setSlip: (slip: Slip) => void
}

/** Things made to order: a touch takes one, again two; what it is made on, with and without, stands under them. */
export function Things(props: ThingsProps) {
  const { shop, slip, setSlip } = props
  const [mode, setMode] = useState<ThingMode>('things')
  const touch = (itemId: MenuItemId) => {
    const next = withThing(slip, itemId)
    setSlip(next)
    const isNew = next.items.length > slip.items.length
    // A thing on a bagel is asked for its bagel at once.
    if (isNew && shop.menu.get(itemId)?.onBagel === true) setMode('bagel')
  }
  return (
    <>
      {mode === 'things' ? (
        <ThingKeys {...props} onTouch={touch} />
      ) : (
        <OptionArea {...props} mode={mode} onDone={() => setMode('things')} />
      )}
      {slip.items.length === 0 ? <PortionRods {...props} /> : <OptionKeys {...props} mode={mode} setMode={setMode} />}
    </>
  )
}

/** Keys of the area: five in a row on a tablet, three on a phone. */
export const CELLS = { tablet: 10, phone: 12 } as const

function ThingKeys(props: ThingsProps & { readonly onTouch: (itemId: MenuItemId) => void }) {
  const { live, state, words, say, sizes, board, shop, slip, onTouch } = props
  const [wanted, setPage] = useState(0)
  const { nowMs } = board.time
  const ruler = live.shopClock === null ? null : rulerNow(state, nowMs, live.shopClock)
  const made = new Map(stillMade(state, nowMs, ruler).map((one) => [one.itemId, one]))
  const all = inUse(shop.menu)
  const cells = sizes.isPhone ? CELLS.phone : CELLS.tablet
  const { items, page, pages } = rowsPage(all, all.length > cells ? cells - 2 : cells, wanted)
  return (
    <div class="counter-things">
      {items.map(({ id, name }) => {
        const times = slip.items.filter(({ itemId }) => itemId === id).reduce((sum, one) => sum + one.times, 0)
        const { why = null, left = null } = made.get(id) ?? {}
        return (
          <Key
            key={id}
            sameTouchMs={FAST_TAP_MS}
            refusal={why === null ? undefined : say.slip.notMade[why]}
            detail={left === null ? undefined : say.slip.left(left)}
            label={times > 0 ? `${times} × ${name}` : name}
            chosen={times > 0 ? slip.items[slip.chosen]?.itemId === id : undefined}
            onPress={() => onTouch(id)}
          />
        )
      })}
      {pages > 1 && <PageKeys page={page} pages={pages} words={words} onPage={setPage} direction="across" />}
    </div>
  )
}

/** Portions on one screenful; those that run out first. */
const PORTIONS_MOST = { tablet: 8, phone: 4 } as const

/** What is left of portions, as rods that lie: those that few are left of first. */
function PortionRods({ state, say, sizes }: ThingsProps) {
  const counted = portionsNow(state).filter(({ free }) => free !== null)
  const shown = [...counted]
    .sort((one, other) => (one.free ?? 0) - (other.free ?? 0) || (one.portionId < other.portionId ? -1 : 1))
    .slice(0, sizes.isPhone ? PORTIONS_MOST.phone : PORTIONS_MOST.tablet)
  return (
    <div class="counter-portions" role="group" aria-label={say.slip.portions}>
      {shown.length === 0 && <p>{say.slip.touchThings}</p>}
      {shown.map(({ portionId, name, free, left }) => (
        <div key={portionId} class={free === 0 ? 'counter-portion counter-portion-out' : 'counter-portion'}>
          <span>{name}</span>
          <LyingRod
            kept={0}
            there={free ?? 0}
            missing={Math.max(0, (left ?? 0) - (free ?? 0))}
            perRing={1}
            widthPx={Math.round(sizes.namePx * 3)}
            heightPx={sizes.namePx}
          />
          <strong>{free}</strong>
        </div>
      ))}
    </div>
  )
}
