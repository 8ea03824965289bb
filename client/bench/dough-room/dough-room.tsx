import { useMemo, useState } from 'preact/hooks'
import type { Act } from '../../../shared-core/day/commands.ts'
import type { State } from '../../../shared-core/day/state.ts'
import type { RoomAct } from '../../../shared-core/dough/room-acts.ts'
import { noonOf } from '../../../shared-core/live/noon.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'
import { localDate } from '../../live/clock-text.ts'
import type { LiveState, ShopStore } from '../../live/shop-store.ts'
import { roomSound } from '../../parts/calls.ts'
import { useEscape } from '../../parts/use-escape.ts'
import { useFlash } from '../../parts/use-flash.ts'
import { useIdleClose } from '../../parts/use-idle-close.ts'
import { doughRoomWords } from '../../words/bench-dough.ts'
import type { DoneView } from '../done-view.ts'
import { roomWhen } from '../room-when.ts'
import type { SheetParts } from '../sheet.tsx'
import { Sheet } from '../sheet.tsx'
import { soundingNow } from '../sounding.ts'
import type { BenchView } from '../view.ts'
import { actText } from './act-text.ts'
import { BatchPage } from './batch-page.tsx'
import { DividerPage } from './divider-page.tsx'
import './dough-room.css'
import { MixPage } from './mix-page.tsx'
import { BuildPage, PreparationsPage } from './preparations-page.tsx'
import { ReadingPage, ReadingsPage } from './readings-page.tsx'
import { RoomBoard } from './room-board.tsx'
import type { RoomPage, RoomParts, RoomSheetProps } from './room-parts.ts'
import { StationPage } from './station-page.tsx'

export interface DoughRoomProps extends SheetParts {
  readonly state: State
  readonly shop: Shop
  readonly store: ShopStore
  readonly live: LiveState
  readonly view: BenchView
  readonly send: (act: Act) => void
}

/** The dough room on the tablet, in place of the line. It stays until somebody goes back. */
export function DoughRoom(props: DoughRoomProps) {
  const { live, view, send, state, shop, calling } = props
  const [page, open] = useState<RoomPage | null>(null)
  const [undone, sayUndone] = useFlash()
  const words = useMemo(() => doughRoomWords(props.words), [props.words])
  // Weighing takes longer than any idle moment: a mix stays until somebody goes back.
  useIdleClose(page !== null && page.kind !== 'mix', () => open(null))
  useEscape(page === null ? props.onClose : () => open(null))
  const { shopClock, nowMs } = live
  if (shopClock === null) {
    return (
      <Sheet {...props} title={words.room.title}>
        <div class="bench-nothing">{words.bench.top.waiting}</div>
      </Sheet>
    )
  }
  const notice = live.notices[live.notices.length - 1]
  const trouble = notice === undefined ? null : words.live.notice(notice).text
  const takeBack = ({ commandId, text }: DoneView) => {
    send({ type: 'takeBack', commandId })
    sayUndone(words.bench.done.takenBack(text))
  }
  const parts: RoomSheetProps = {
    words,
    sizes: props.sizes,
    room: props.room,
    calling,
    onClose: props.onClose,
    state,
    shop,
    nowMs,
    localDate: localDate(shopClock, nowMs),
    noonOf: (isoDate) => noonOf(shopClock, isoDate),
    send,
    open,
    lastDone: view.lastDone,
    takeBack,
  }
  // On a page over the room nothing else says that a tap was refused, or that another mix calls.
  if (page !== null)
    return <OnePage {...parts} calling={trouble ?? calling ?? otherCall(page, view, parts)} page={page} />
  const told = undone ?? trouble ?? view.lastDone?.text ?? words.bench.done.nothingHere
  return (
    <RoomBoard
      {...parts}
      told={told}
      isTrouble={undone === null && trouble !== null}
      sounding={soundingNow(view, live, props.words)}
      onComing={(key) => props.store.sayComing(key)}
      acts={view.roomActs}
    />
  )
}

/** What the dough room calls for beside the mix that is looked at. */
function otherCall(page: RoomPage, { roomActs }: BenchView, parts: RoomParts): string | null {
  const looked = page.kind === 'mix' ? page.mixId : null
  const isCalling = (act: RoomAct) => act.status !== 'coming' && roomSound(act) !== null && act.mixId !== looked
  const call = roomActs.find(isCalling)
  return call === undefined ? null : `${actText(call, parts)} ${roomWhen(call, parts.nowMs, parts.words.times)}`
}

function OnePage(props: RoomSheetProps & { readonly page: RoomPage }) {
  const { page } = props
  switch (page.kind) {
    case 'mix':
      return <MixPage {...props} mixId={page.mixId} />
    case 'batch':
      return <BatchPage {...props} batchId={page.batchId} part={page.part ?? 'look'} />
    case 'station':
      return <StationPage {...props} station={page.station} batchIds={page.batchIds ?? null} />
    case 'preparations':
      return <PreparationsPage {...props} />
    case 'build':
      return <BuildPage {...props} preparationId={page.preparationId} forDate={page.forDate} />
    case 'readings':
      return <ReadingsPage {...props} />
    case 'reading':
      return <ReadingPage {...props} place={page.place} />
    case 'divider':
      return <DividerPage {...props} doughId={page.doughId} mixId={page.mixId} />
  }
}
