import { useCallback, useEffect, useMemo, useState } from 'preact/hooks'
import { bakingIsOver } from '../../shared-core/day/changeover.ts'
import type { Act } from '../../shared-core/day/commands.ts'
import { notesWaiting } from '../../shared-core/day/notes.ts'
import type { VarietyId } from '../../shared-core/ids.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { epochMs } from '../../shared-core/units.ts'
import type { AfternoonAhead } from '../parts/afternoon.ts'
import { afternoonAhead } from '../parts/afternoon.ts'
import { outlookNow } from '../parts/outlook-now.ts'
import { rulerNow, rulerOfDay } from '../parts/ruler-of-day.ts'
import { rulerSize } from '../parts/ruler-size.ts'
import type { RulerDay } from '../parts/ruler-view.ts'
import { useEscape } from '../parts/use-escape.ts'
import { useIdleClose } from '../parts/use-idle-close.ts'
import type { Found } from './after-count.ts'
import { foundBy } from './after-count.ts'
import type { CounterRod } from './counter-rods.ts'
import { counterRods } from './counter-rods.ts'
import type { CounterParts } from './counter-screen.tsx'
import type { CounterSizes } from './counter-sizes.ts'
import { Foot } from './foot.tsx'
import type { Hand } from './hand.ts'
import { letGo, touched } from './hand.ts'
import { Rack } from './rack.tsx'
import type { RackRoom } from './rack-layout.ts'
import { rackLayout } from './rack-layout.ts'
import { rackView } from './rack-view.ts'
import type { RodTime } from './rod-text.ts'
import { rackDay } from './rod-text.ts'
import type { Sheet } from './sheet.ts'
import { SheetOf } from './sheets.tsx'
import { Top } from './top.tsx'
import type { OrdersNow } from './use-orders-now.ts'
import { useOrdersNow } from './use-orders-now.ts'

export interface BoardState {
  readonly rods: readonly CounterRod[]
  readonly time: RodTime
  readonly isBakingOver: boolean
  /** What remains for the afternoon; null: nothing is to be decided any more, or nobody knows. */
  readonly afternoon: AfternoonAhead | null
  readonly orders: OrdersNow
  /** The newest note as a line; "" when there is none. */
  readonly noteText: string
  readonly hand: Hand
  readonly setHand: (hand: Hand) => void
  /** Touches of rods take pieces out of the hand. */
  readonly isLettingGo: boolean
  readonly setLettingGo: (is: boolean) => void
  /** A sale is being tapped of which nobody knows the kinds. */
  readonly isUnnamed: boolean
  readonly setUnnamed: (is: boolean) => void
  readonly found: Found | null
  readonly setFound: (found: Found | null) => void
  /** Sends a count. @returns what it found; null when it was not taken */
  readonly count: (act: Act, varietyIds: readonly VarietyId[]) => Found | null
  /** Sends a count from the rack and shows what it found. */
  readonly sendCount: (act: Act, varietyIds: readonly VarietyId[]) => void
  readonly openSheet: (sheet: Sheet | null) => void
}

/** Rods are reckoned anew at every change, and else so often: run-out times are told in minutes. */
const SLOW_MS = 5_000
/** What is left in hand so long was forgotten: the next customer must not get it. */
const HAND_FORGOTTEN_MS = 60_000

export function CounterBoard(parts: CounterParts) {
  const { live, state, words, sizes, glass } = parts
  const [sheet, openSheet] = useState<Sheet | null>(null)
  const [page, setPage] = useState(0)
  useEscape(sheet === null ? null : () => openSheet(null))
  useIdleClose(sheet !== null && !IS_WORKED_AT.has(sheet.kind), () => openSheet(null))
  const slowMs = epochMs(live.nowMs - (live.nowMs % SLOW_MS))
  // What was counted a moment ago is for sale from that moment on.
  const rodsMs = epochMs(Math.max(slowMs, state.recordedAtMs))
  const ruler = useDay(parts)
  const closeMs = ruler === null ? null : epochMs(ruler.toMs)
  const outlook = outlookNow(live, state)
  const all = useMemo(() => counterRods(state, rodsMs, { closeMs, outlook }), [state, rodsMs, closeMs, outlook])
  const time = { nowMs: rodsMs, closeMs, day: rackDay(state) }
  const board: BoardState = {
    rods: all,
    time,
    isBakingOver: useBakingOver(parts, rodsMs),
    afternoon: afternoonAhead(outlook, rodsMs),
    orders: useOrdersNow(parts, time),
    noteText: newestNote(parts),
    openSheet,
    ...useInHand(parts, sheet, openSheet),
  }
  const names = all.map((rod) => rod.name).join('\n')
  const room = useMemo(() => rackRoom(glass, sizes), [glass, sizes])
  const layout = useMemo(() => rackLayout(names.split('\n'), room, sizes, words), [names, room, sizes, words])
  const { hand, isLettingGo } = board
  return (
    <div class={`counter-page counter-${room.form} ${sizes.isPhone ? 'counter-phone' : 'counter-tablet'}`}>
      <Top {...parts} ruler={ruler} rulerFontPx={sizes.quietPx} />
      {sheet === null ? (
        <>
          <Rack
            view={rackView({ rods: all, time, hand, layout, sizes, words, page })}
            layout={layout}
            words={words}
            onTouch={(varietyId) => board.setHand(isLettingGo ? letGo(hand, varietyId) : touched(hand, varietyId))}
            onPage={setPage}
          />
          <Foot {...parts} board={board} />
        </>
      ) : (
        <SheetOf {...parts} board={board} sheet={sheet} />
      )}
    </div>
  )
}

/** Whoever counts walks along the rack, whoever writes thinks, and a customer who orders takes their time: these wait. */
const IS_WORKED_AT: ReadonlySet<Sheet['kind']> = new Set(['sweep', 'close', 'notes', 'take', 'slip'])

/** What is in somebody's hands: pieces, a sale without names, the answer to a count. */
function useInHand({ store }: CounterParts, sheet: Sheet | null, openSheet: (sheet: Sheet | null) => void) {
  const [hand, holdHand] = useState<Hand>([])
  const [isLettingGo, setLettingGo] = useState(false)
  const [isUnnamed, setUnnamed] = useState(false)
  const [found, setFound] = useState<Found | null>(null)
  const setHand = useCallback((next: Hand) => {
    holdHand(next)
    setUnnamed(false)
    setFound(null)
    if (next.length === 0) setLettingGo(false)
  }, [])
  const putAllBack = useCallback(() => setHand([]), [setHand])
  const count = (act: Act, varietyIds: readonly VarietyId[]) => {
    const before = store.getState().shown
    const commandId = store.send(act)
    const after = store.getState().shown
    if (before === null || after === null || commandId === null) return null
    return foundBy(before, after, commandId, varietyIds)
  }
  const sendCount = (act: Act, varietyIds: readonly VarietyId[]) => {
    const what = count(act, varietyIds)
    setHand([])
    openSheet(null)
    setFound(what)
  }
  const isForgettable = sheet === null && (hand.length > 0 || isUnnamed || found !== null)
  const forgettable = JSON.stringify([hand, isUnnamed, found?.commandId ?? null])
  useForgotten(isForgettable ? forgettable : null, putAllBack)
  return { hand, setHand, isLettingGo, setLettingGo, isUnnamed, setUnnamed, found, setFound, count, sendCount }
}

function useBakingOver({ live, state }: CounterParts, nowMs: EpochMs): boolean {
  const { shopClock } = live
  return useMemo(
    () => shopClock !== null && bakingIsOver(state, nowMs, rulerNow(state, nowMs, shopClock)),
    [state, nowMs, shopClock],
  )
}

function newestNote({ state, words }: CounterParts): string {
  const notes = notesWaiting(state)
  const newest = notes[notes.length - 1]
  return newest === undefined ? '' : words.jobs.newestNote(newest.text, newest.atMs)
}

function useDay({ live, state, words }: CounterParts): RulerDay | null {
  const minute = Math.floor(live.nowMs / 60_000)
  const { shopClock } = live
  return useMemo(
    () => (shopClock === null ? null : rulerOfDay(state, epochMs(minute * 60_000), shopClock, words.counter.day)),
    [state, minute, shopClock, words],
  )
}

/** What nobody has touched for a while is put back. @param touched changes with each touch; null: nothing to forget */
function useForgotten(touched: string | null, forget: () => void): void {
  useEffect(() => {
    if (touched === null) return
    const timer = window.setTimeout(forget, HAND_FORGOTTEN_MS)
    return () => window.clearTimeout(timer)
  }, [touched, forget])
}

/** The glass without top and foot; a low one gets a page that is longer than itself. */
export function rackRoom({ widthPx, heightPx }: { widthPx: number; heightPx: number }, sizes: CounterSizes): RackRoom {
  const { keyPx, marginPx } = sizes
  const heightLeft = heightPx - 4 * marginPx - topHeight(sizes) - stripHeight(sizes) - keysHeight(sizes)
  return { widthPx: widthPx - 2 * marginPx, heightPx: heightLeft, form: heightLeft < 2 * keyPx ? 'long' : 'glass' }
}

export function topHeight({ quietPx }: CounterSizes): number {
  return rulerSize(quietPx, 1).height
}

/** The words over the keys, their own space included: one line, on a phone two. */
export function stripHeight({ quietPx, isPhone }: CounterSizes): number {
  return Math.ceil(quietPx * (isPhone ? 2.7 : 1.45))
}

/** The keys of the foot: one row, on a phone two. */
export function keysHeight({ keyPx, gapPx, isPhone }: CounterSizes): number {
  return isPhone ? 2 * keyPx + gapPx : keyPx
}
