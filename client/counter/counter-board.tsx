import { useEffect, useMemo, useState } from 'preact/hooks'
import { epochMs } from '../../shared-core/units.ts'
import { rulerOfDay } from '../parts/ruler-of-day.ts'
import { rulerSize } from '../parts/ruler-size.ts'
import type { RulerDay } from '../parts/ruler-view.ts'
import type { AmountsPurpose } from '../words/counter.ts'
import { AmountsSheet } from './amounts-sheet.tsx'
import type { CounterRod } from './counter-rods.ts'
import { counterRods } from './counter-rods.ts'
import type { CounterParts } from './counter-screen.tsx'
import type { CounterSizes } from './counter-sizes.ts'
import { DeviceSheet } from './device-sheet.tsx'
import { Foot } from './foot.tsx'
import type { Hand } from './hand.ts'
import { touched } from './hand.ts'
import { KeptSheet } from './kept-sheet.tsx'
import { Rack } from './rack.tsx'
import type { RackRoom } from './rack-layout.ts'
import { rackLayout } from './rack-layout.ts'
import { rackView } from './rack-view.ts'
import type { RodTime } from './rod-text.ts'
import { Top } from './top.tsx'

/** What covers the rack; null: nothing. */
export type Sheet =
  | { readonly kind: 'amounts'; readonly purpose: AmountsPurpose }
  | { readonly kind: 'kept' | 'device' }

export interface BoardState {
  readonly rods: readonly CounterRod[]
  readonly time: RodTime
  readonly hand: Hand
  readonly setHand: (hand: Hand) => void
  readonly openSheet: (sheet: Sheet | null) => void
}

/** Rods are reckoned anew at every change, and else so often: run-out times are told in minutes. */
const SLOW_MS = 5_000
/** What is left in hand so long was forgotten: the next customer must not get it. */
const HAND_FORGOTTEN_MS = 60_000

export function CounterBoard(parts: CounterParts) {
  const { live, state, words, sizes, glass } = parts
  const [hand, setHand] = useState<Hand>([])
  const [sheet, openSheet] = useState<Sheet | null>(null)
  const [page, setPage] = useState(0)
  const ruler = useDay(parts)
  const slowMs = epochMs(live.nowMs - (live.nowMs % SLOW_MS))
  // What was counted a moment ago is for sale from that moment on.
  const rodsMs = epochMs(Math.max(slowMs, state.recordedAtMs))
  const all = useMemo(() => counterRods(state, rodsMs), [state, rodsMs])
  const names = all.map((rod) => rod.name).join('\n')
  const room = useMemo(() => rackRoom(glass, sizes), [glass, sizes])
  const layout = useMemo(() => rackLayout(names.split('\n'), room, sizes, words), [names, room, sizes, words])
  const time = { nowMs: rodsMs, closeMs: ruler === null ? null : epochMs(ruler.toMs) }
  const board: BoardState = { rods: all, time, hand, setHand, openSheet }
  useForgottenHand(hand, sheet, setHand)
  return (
    <div class={`counter-page counter-${room.form}`}>
      <Top {...parts} ruler={ruler} rulerFontPx={sizes.quietPx} />
      {sheet === null && (
        <>
          <Rack
            view={rackView({ rods: all, time, hand, layout, sizes, words, page })}
            layout={layout}
            words={words}
            onTouch={(varietyId) => setHand(touched(hand, varietyId))}
            onPage={setPage}
          />
          <Foot {...parts} board={board} />
        </>
      )}
      {sheet?.kind === 'amounts' && <AmountsSheet {...parts} board={board} purpose={sheet.purpose} />}
      {sheet?.kind === 'kept' && <KeptSheet {...parts} onClose={() => openSheet(null)} />}
      {sheet?.kind === 'device' && <DeviceSheet {...parts} onClose={() => openSheet(null)} />}
    </div>
  )
}

function useDay({ live, state, words }: CounterParts): RulerDay | null {
  const minute = Math.floor(live.nowMs / 60_000)
  const { shopClock } = live
  return useMemo(
    () => (shopClock === null ? null : rulerOfDay(state, epochMs(minute * 60_000), shopClock, words.counter.day)),
    [state, minute, shopClock, words],
  )
}

function useForgottenHand(hand: Hand, sheet: Sheet | null, setHand: (hand: Hand) => void): void {
  useEffect(() => {
    if (hand.length === 0 || sheet !== null) return
    const timer = window.setTimeout(() => setHand([]), HAND_FORGOTTEN_MS)
    return () => window.clearTimeout(timer)
  }, [hand, sheet, setHand])
}

/** The glass without top and foot; a narrow or low one gets a page that is longer than itself. */
export function rackRoom({ widthPx, heightPx }: { widthPx: number; heightPx: number }, sizes: CounterSizes): RackRoom {
  const { keyPx, marginPx } = sizes
  const heightLeft = heightPx - 4 * marginPx - topHeight(sizes) - stripHeight(sizes) - keyPx
  const form = sizes.isPhone || heightLeft < 2 * keyPx ? 'long' : 'glass'
  return { widthPx: widthPx - 2 * marginPx, heightPx: heightLeft, form }
}

export function topHeight({ quietPx }: CounterSizes): number {
  return rulerSize(quietPx, 1).height
}

/** The line of words over the keys, its own space included. */
export function stripHeight({ quietPx }: CounterSizes): number {
  return Math.ceil(quietPx * 1.45)
}
