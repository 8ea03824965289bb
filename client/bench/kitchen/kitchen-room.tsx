import { useMemo, useState } from 'preact/hooks'
import type { Act } from '../../../shared-core/day/commands.ts'
import type { State } from '../../../shared-core/day/state.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'
import type { LiveState, ShopStore } from '../../live/shop-store.ts'
import type { KitchenLook } from '../../parts/kitchen-calls.ts'
import { useEscape } from '../../parts/use-escape.ts'
import { useFlash } from '../../parts/use-flash.ts'
import { useIdleClose } from '../../parts/use-idle-close.ts'
import { kitchenRoomWords } from '../../words/bench-kitchen.ts'
import type { DoneView } from '../done-view.ts'
import type { SheetParts } from '../sheet.tsx'
import { Sheet } from '../sheet.tsx'
import { soundingNow } from '../sounding.ts'
import type { BenchView } from '../view.ts'
import { CountPage } from './count-page.tsx'
import { ItemPage } from './item-page.tsx'
import './kitchen.css'
import { KitchenBoard } from './kitchen-board.tsx'
import type { KitchenPageOpen, KitchenParts } from './kitchen-parts.ts'
import { nextActs } from './next-view.ts'
import { PortionsPage } from './portions-page.tsx'
import { ReadyPage } from './ready-page.tsx'
import { RodPage } from './rod-page.tsx'
import { useNotes } from './use-notes.ts'

export interface KitchenRoomProps extends SheetParts {
  readonly state: State
  readonly shop: Shop
  readonly store: ShopStore
  readonly live: LiveState
  readonly view: BenchView
  readonly kitchen: KitchenLook
  readonly send: (act: Act) => void
}

/** What is made to order, on the tablet, in place of the line. It stays until somebody goes back. */
export function KitchenRoom(props: KitchenRoomProps) {
  const { live, view, send, state, shop, kitchen } = props
  const [page, open] = useState<KitchenPageOpen | null>(null)
  const [undone, sayUndone] = useFlash()
  const words = useMemo(() => kitchenRoomWords(props.words), [props.words])
  const noteOf = useNotes(state)
  useIdleClose(page !== null, () => open(null))
  useEscape(page === null ? props.onClose : () => open(null))
  const notice = live.notices[live.notices.length - 1]
  const trouble = notice === undefined ? null : words.live.notice(notice).text
  const takeBack = ({ commandId, text }: DoneView) => {
    send({ type: 'takeBack', commandId })
    sayUndone(words.bench.done.takenBack(text))
  }
  const parts: KitchenParts = {
    words,
    sizes: props.sizes,
    room: props.room,
    calling: props.calling,
    onClose: props.onClose,
    state,
    shop,
    nowMs: live.nowMs,
    queue: kitchen.queue,
    stations: live.settings.kitchen.filter((id) => shop.kitchenStations.get(id)?.retired === false),
    noteOf,
    send,
    open,
    lastDone: view.lastDone,
    takeBack,
  }
  if (shop.kitchenStations.size === 0) {
    return (
      <Sheet {...props} title={words.bench.more.kitchen}>
        <div class="bench-nothing">{words.kitchen.noKitchen}</div>
      </Sheet>
    )
  }
  if (page !== null) return <OnePage {...parts} calling={trouble ?? props.calling} page={page} />
  const told = undone ?? trouble ?? view.lastDone?.text ?? words.bench.done.nothingHere
  return (
    <KitchenBoard
      {...parts}
      acts={nextActs({ ...parts, acts: view.kitchenActs })}
      keys={live.settings.keys}
      told={told}
      isTrouble={undone === null && trouble !== null}
      sounding={soundingNow(view, live, props.words)}
      onComing={(key) => props.store.sayComing(key)}
    />
  )
}

function OnePage(props: KitchenParts & { readonly page: KitchenPageOpen }) {
  const { page } = props
  switch (page.kind) {
    case 'item':
      return <ItemPage {...props} part={page.part} />
    case 'rod':
      return <RodPage {...props} rod={page.key} />
    case 'ready':
      return <ReadyPage {...props} />
    case 'portions':
      return <PortionsPage {...props} />
    case 'count':
      return <CountPage {...props} portionId={page.portionId} />
  }
}
