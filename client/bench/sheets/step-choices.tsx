import type { Act } from '../../../shared-core/day/commands.ts'
import { inUse } from '../../../shared-core/shop/in-order.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'
import { durationMs } from '../../../shared-core/units.ts'
import type { LiveState, ShopStore } from '../../live/shop-store.ts'
import type { GridItem, SheetParts } from '../sheet.tsx'
import { KeyGrid, Sheet } from '../sheet.tsx'
import { columnsOf } from './more-sheet.tsx'
import type { OpenSheet } from './open-sheet.ts'

interface ChoiceProps extends SheetParts {
  readonly shop: Shop
  readonly send: (act: Act) => void
  readonly open: (sheet: OpenSheet) => void
}

/** How long until the next look, in minutes. Common practice, no source. */
const LOOK_AGAIN_MINUTES = [10, 15, 20, 30] as const

/** A float test that has not passed: when to look again. */
export function FloatSheet(props: ChoiceProps & { readonly sheet: OpenSheet & { readonly kind: 'float' } }) {
  const { sheet, words, send, open } = props
  const { doughId, personId, from } = sheet
  const { steps } = words.shift
  const items = LOOK_AGAIN_MINUTES.map((minutes) => ({
    id: `look ${minutes}`,
    label: steps.lookIn(minutes),
    onPress: () => {
      send({ type: 'testFloat', doughId, passed: false, lookAgainMs: durationMs(minutes * 60_000), personId })
      open({ kind: from })
    },
  }))
  return <Choices {...props} title={`${words.names.dough(doughId)}: ${steps.notReady}`} items={items} />
}

/** Who will do a step. */
export function GiveSheet(props: ChoiceProps & { readonly sheet: OpenSheet & { readonly kind: 'give' } }) {
  const { sheet, shop, words, send, open } = props
  const { stepId, doughId, from } = sheet
  const { steps } = words.shift
  const give = (id: string, label: string, personId: (Act & { type: 'giveStep' })['personId']): GridItem => ({
    id,
    label,
    onPress: () => {
      send({ type: 'giveStep', stepId, doughId, personId })
      open({ kind: from })
    },
  })
  const items = [give('nobody', steps.nobody, null), ...inUse(shop.people).map(({ id, name }) => give(id, name, id))]
  return <Choices {...props} title={steps.giveTo(words.names.step(stepId))} items={items} />
}

/** Who works at this screen. */
export function PersonSheet(props: ChoiceProps & { readonly store: ShopStore; readonly live: LiveState }) {
  const { shop, words, store, live, onClose } = props
  const { steps } = words.shift
  const choose = (id: string, label: string, personId: LiveState['settings']['personId']): GridItem => ({
    id,
    label,
    chosen: live.settings.personId === personId,
    onPress: () => {
      store.changeSettings({ personId })
      onClose()
    },
  })
  const items = [
    choose('nobody', steps.nobody, null),
    ...inUse(shop.people).map(({ id, name }) => choose(id, name, id)),
  ]
  return <Choices {...props} title={steps.who} items={items} />
}

function Choices(props: ChoiceProps & { readonly title: string; readonly items: readonly GridItem[] }) {
  const { words, sizes, room, items } = props
  return (
    <Sheet {...props}>
      <KeyGrid
        words={words}
        sizes={sizes}
        room={room}
        columns={columnsOf(props)}
        rows={room.rows}
        widthPx={room.widthPx}
        items={items}
      />
    </Sheet>
  )
}
