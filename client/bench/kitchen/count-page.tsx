import { useState } from 'preact/hooks'
import type { PortionId } from '../../../shared-core/ids.ts'
import { GridKey } from '../sheet.tsx'
import { PiecesStepper } from '../sheets/pieces-stepper.tsx'
import { splitRoom } from '../sheets/split.ts'
import type { KitchenParts } from './kitchen-parts.ts'
import { KitchenSheet } from './kitchen-sheet.tsx'

const PORTIONS_MAX = 5_000

/** How many portions are left, counted: in ones, and by the tray. */
export function CountPage(props: KitchenParts & { readonly portionId: PortionId }) {
  const { portionId, state, shop, words, room, sizes, send, open } = props
  const portion = shop.portions.get(portionId)
  const [portions, setPortions] = useState(() => state.portions.get(portionId)?.portions ?? 0)
  const { kitchen, names } = words
  const { isNarrow, leftPx } = splitRoom(room)
  const widthPx = isNarrow ? leftPx : room.widthPx
  const tray = portion?.trayPortions ?? 1
  const save = () => {
    send({ type: 'countPortions', portionId, portions })
    open({ kind: 'portions' })
  }
  return (
    <KitchenSheet {...props} title={names.portion(portionId)}>
      <div class="bench-column" style={{ width: `${widthPx}px` }}>
        <PiecesStepper
          isNarrow={isNarrow}
          words={words}
          value={portions}
          min={0}
          max={PORTIONS_MAX}
          steps={tray > 1 ? [1, tray] : [1]}
          counted={kitchen.portion}
          onChange={setPortions}
        />
        <GridKey
          item={{ id: 'save', label: kitchen.count, tone: 'strong', onPress: save }}
          widthPx={widthPx}
          heightPx={room.keyPx}
          sizes={sizes}
        />
      </div>
    </KitchenSheet>
  )
}
