import { useState } from 'preact/hooks'
import type { StationId } from '../../../shared-core/ids.ts'
import { epochMs } from '../../../shared-core/units.ts'
import { kitchenPedal } from '../../parts/calls.ts'
import { useFlash } from '../../parts/use-flash.ts'
import { usePedals } from '../../parts/use-pedals.ts'
import { pageOf } from '../pages.ts'
import type { Sounding } from '../sounding.ts'
import { KitchenFoot } from './kitchen-foot.tsx'
import { actsInBar, KitchenHead } from './kitchen-head.tsx'
import { kitchenLayout } from './kitchen-layout.ts'
import type { KitchenParts } from './kitchen-parts.ts'
import type { NextAct } from './next-view.ts'
import { commandOf } from './next-view.ts'
import { OvenStrip } from './oven-strip.tsx'
import type { ShelfChoice } from './oven-view.ts'
import { hasOven, ovenGroups, shelfChoices } from './oven-view.ts'
import { RodAxis, RodRow } from './rod-row.tsx'
import type { RodRing } from './rods-view.ts'
import { rodViews } from './rods-view.ts'

export interface KitchenBoardProps extends KitchenParts {
  /** Soonest first. */
  readonly acts: readonly NextAct[]
  readonly keys: Readonly<Record<string, StationId>>
  /** What was just done here, or an answer to a tap. */
  readonly told: string
  readonly isTrouble: boolean
  readonly sounding: Sounding | null
  readonly onComing: (key: string) => void
}

/** The ruler moves on in steps: what stands is not painted anew at every tick. */
const AXIS_STEP_MS = 15_000
const BEHIND_MS = 8 * 60_000
const AHEAD_MS = 22 * 60_000

/** The kitchen itself: what is next, the rods along the ruler, the oven's places, and what hands need besides. */
export function KitchenBoard(props: KitchenBoardProps) {
  const { words, room, sizes, nowMs, state, shop, stations, send, open } = props
  const [chosenKeys, setChosen] = useState<ReadonlySet<string>>(new Set())
  const [isLooking, setLooking] = useState(false)
  const [wantedPage, setPage] = useState(0)
  const [flash, say] = useFlash()
  useKitchenPedals(props, say)
  const rods = rodViews(props)
  const waiting = rods.flatMap(({ rings }) => rings.filter(({ stage, isOven }) => stage === 'next' && isOven))
  // Somebody else may have put it in meanwhile.
  const chosen = waiting.filter(({ key }) => chosenKeys.has(key))
  const isOvenHere = hasOven(shop, stations)
  const groups = isOvenHere ? ovenGroups(props) : []
  const choices = chosen.length > 0 ? shelfChoices(state, shop, nowMs) : null
  const ovenCells = choices === null ? groups.length : choices.length
  const layout = kitchenLayout({ room, minPx: sizes.minPx, kinds: rods.length, ovenCells })
  const { items: shown, page, pages } = pageOf(rods, { places: layout.rods, arrows: 0 }, wantedPage)
  const press = (ring: RodRing) => {
    setLooking(false)
    const parts = [ring.part]
    if (isLooking || ring.stage === 'away') return open({ kind: 'item', part: ring.part })
    if (ring.stage === 'next' && ring.isOven) return setChosen(toggled(chosenKeys, ring.key))
    if (ring.stage === 'next') return send({ type: 'moveItems', parts, to: 'begun', shelfId: null })
    const group = ring.isOven ? groups.find(({ keys }) => keys.includes(ring.key)) : undefined
    send(group?.act ?? { type: 'moveItems', parts, to: 'made', shelfId: null })
  }
  const putIn = ({ shelfId }: ShelfChoice) => {
    send({ type: 'moveItems', parts: chosen.map(({ part }) => part), to: 'begun', shelfId })
    setChosen(new Set())
  }
  const axisMs = epochMs(nowMs - (nowMs % AXIS_STEP_MS))
  const span = { fromMs: axisMs - BEHIND_MS, toMs: axisMs + AHEAD_MS }
  return (
    <section
      class={layout.isNarrow ? 'bench-sheet bench-sheet-narrow kitchen-room' : 'bench-sheet kitchen-room'}
      style={{ '--margin': `${room.marginPx}px`, '--gap': `${room.gapPx}px`, '--key': `${room.keyPx}px` }}
      role="dialog"
      aria-modal="true"
      aria-label={words.bench.more.kitchen}
      data-differing={isLooking}
    >
      <KitchenHead {...props} layout={layout} onAct={(act) => doAct(act, props)} />
      <div class="kitchen-body">
        {rods.length === 0 ? (
          <div class="bench-nothing bench-quiet">{words.kitchen.nothingHere}</div>
        ) : (
          <RodAxis
            span={span}
            nowMs={axisMs}
            layout={layout}
            minPx={sizes.minPx}
            nowText={words.kitchen.now}
            clockText={(ms) => words.times.clock(epochMs(ms))}
            heightPx={shown.length * layout.rodPx}
          />
        )}
        {shown.map((rod) => (
          <RodRow
            key={rod.key}
            rod={rod}
            span={span}
            layout={layout}
            sizes={sizes}
            words={words}
            gapPx={room.gapPx}
            chosen={new Set(chosen.map(({ key }) => key))}
            onPress={press}
            onMore={({ key }) => open({ kind: 'rod', key })}
          />
        ))}
        <OvenStrip
          groups={groups}
          choices={choices}
          chosenCount={chosen.length}
          chosenSlots={chosen.reduce((sum, { slots }) => sum + slots, 0)}
          layout={layout}
          sizes={sizes}
          words={words}
          gapPx={room.gapPx}
          onGroup={({ act, part }) => {
            setLooking(false)
            if (isLooking) open({ kind: 'item', part })
            else send(act)
          }}
          onShelf={putIn}
        />
      </div>
      <KitchenFoot
        {...props}
        told={flash ?? (isLooking ? words.kitchen.lookHint : props.told)}
        isTrouble={flash === null && !isLooking && props.isTrouble}
        isLooking={isLooking}
        onLook={() => setLooking(!isLooking)}
        letGo={chosen.length === 0 ? null : () => setChosen(new Set())}
        otherRods={pages > 1 ? rods.length - shown.length : 0}
        onOtherRods={() => setPage((page + 1) % pages)}
      />
    </section>
  )
}

function toggled(keys: ReadonlySet<string>, key: string): ReadonlySet<string> {
  return keys.has(key) ? new Set([...keys].filter((one) => one !== key)) : new Set([...keys, key])
}

/** Does what is next, or opens what it needs. */
function doAct(act: NextAct, { send, open }: Pick<KitchenParts, 'send' | 'open'>): void {
  const command = commandOf(act)
  if (command !== null) send(command)
  else if (act.portionId !== null) open({ kind: 'count', portionId: act.portionId })
}

/** A pad or pedal of a kitchen station does the first of its acts that stands in the bar. */
function useKitchenPedals(props: KitchenBoardProps, say: (text: string) => void): void {
  const { acts, keys, words, shop } = props
  usePedals<NextAct>(keys, false, {
    actOf: (station) =>
      actsInBar(acts).find(({ stationId }) => stationId !== null && kitchenPedal(stationId) === station) ?? null,
    onAct: (act) => doAct(act, props),
    onWhyNot: (station, why) => {
      const own = [...shop.kitchenStations.values()].find(({ id }) => kitchenPedal(id) === station)
      const { top } = words.bench
      if (own !== undefined) say(why === 'just-changed' ? top.pedalTooSoon : top.pedalNothing(own.name))
    },
  })
}
