import { useState } from 'preact/hooks'
import type { StationId } from '../../../shared-core/ids.ts'
import { kitchenPedal } from '../../parts/calls.ts'
import type { NextAct } from '../../parts/kitchen-calls.ts'
import { kitchenCommand, kitchenPedalAct } from '../../parts/kitchen-calls.ts'
import { useFlash } from '../../parts/use-flash.ts'
import { usePedals } from '../../parts/use-pedals.ts'
import { pageOf } from '../pages.ts'
import type { Sounding } from '../sounding.ts'
import { KitchenFoot } from './kitchen-foot.tsx'
import { actsInBar, KitchenHead } from './kitchen-head.tsx'
import { kitchenLayout } from './kitchen-layout.ts'
import type { KitchenParts } from './kitchen-parts.ts'
import { OvenStrip } from './oven-strip.tsx'
import type { OvenGroup, ShelfChoice } from './oven-view.ts'
import { hasOven, ovenGroups, shelfChoices } from './oven-view.ts'
import { Rods } from './rods.tsx'
import type { RodRing, RodView } from './rods-view.ts'
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

/** The kitchen itself: what is next, the rods along the ruler, the oven's places, and what hands need besides. */
export function KitchenBoard(props: KitchenBoardProps) {
  const { words, room, shop, stations, sizes } = props
  const [isLooking, setLooking] = useState(false)
  const [wantedPage, setPage] = useState(0)
  const [flash, say] = useFlash()
  useKitchenPedals(props, say)
  const rods = rodViews(props)
  const groups = hasOven(shop, stations) ? ovenGroups(props) : []
  const oven = useChosen(rods, props)
  const ovenCells = oven.choices === null ? groups.length : oven.choices.length
  const layout = kitchenLayout({ room, minPx: sizes.minPx, kinds: rods.length, ovenCells })
  const { items: shown, page, pages } = pageOf(rods, { places: layout.rods, arrows: 0 }, wantedPage)
  const hands = handsOf({ props, groups, isLooking, stopLooking: () => setLooking(false), toggle: oven.toggle })
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
        <Rods {...props} rods={shown} layout={layout} chosen={oven.keys} onPress={hands.onRing} />
        <OvenStrip
          {...props}
          groups={groups}
          choices={oven.choices}
          chosenCount={oven.keys.size}
          chosenSlots={oven.slots}
          layout={layout}
          onGroup={hands.onGroup}
          onShelf={oven.putIn}
        />
      </div>
      <KitchenFoot
        {...props}
        told={flash ?? (isLooking ? words.kitchen.lookHint : props.told)}
        isTrouble={flash === null && !isLooking && props.isTrouble}
        isLooking={isLooking}
        onLook={() => setLooking(!isLooking)}
        letGo={oven.letGo}
        otherRods={pages > 1 ? rods.length - shown.length : 0}
        onOtherRods={() => setPage((page + 1) % pages)}
      />
    </section>
  )
}

/** Rings that were touched to go into the oven together, and the shelves that they may go onto. */
function useChosen(rods: readonly RodView[], { state, shop, nowMs, send }: KitchenBoardProps) {
  const [touched, setTouched] = useState<ReadonlySet<string>>(new Set())
  // Somebody else may have put it in meanwhile.
  const chosen = rods
    .flatMap(({ rings }) => rings)
    .filter(({ key, stage, isOven }) => stage === 'next' && isOven && touched.has(key))
  const letGo = () => setTouched(new Set())
  return {
    keys: new Set(chosen.map(({ key }) => key)),
    slots: chosen.reduce((sum, { slots }) => sum + slots, 0),
    choices: chosen.length > 0 ? shelfChoices(state, shop, nowMs) : null,
    letGo: chosen.length > 0 ? letGo : null,
    toggle: (key: string) => setTouched(toggled(touched, key)),
    putIn: ({ shelfId }: ShelfChoice) => {
      send({ type: 'moveItems', parts: chosen.map(({ part }) => part), to: 'begun', shelfId })
      letGo()
    },
  }
}

interface HandsParts {
  readonly props: KitchenBoardProps
  readonly groups: readonly OvenGroup[]
  readonly isLooking: boolean
  readonly stopLooking: () => void
  readonly toggle: (key: string) => void
}

/** What touches of rings do: by hand begun, then made; into the oven chosen, and out of it what its shelf calls for. */
function handsOf({ props: { send, open }, groups, isLooking, stopLooking, toggle }: HandsParts) {
  const onRing = ({ key, part, stage, isOven }: RodRing) => {
    stopLooking()
    if (isLooking || stage === 'away') return open({ kind: 'item', part })
    if (stage === 'next' && isOven) return toggle(key)
    if (stage === 'next') return send({ type: 'moveItems', parts: [part], to: 'begun', shelfId: null })
    const group = isOven ? groups.find(({ keys }) => keys.includes(key)) : undefined
    send(group?.act ?? { type: 'moveItems', parts: [part], to: 'made', shelfId: null })
  }
  const onGroup = ({ part, act }: OvenGroup) => {
    stopLooking()
    if (isLooking) open({ kind: 'item', part })
    else send(act)
  }
  return { onRing, onGroup }
}

function toggled(keys: ReadonlySet<string>, key: string): ReadonlySet<string> {
  return keys.has(key) ? new Set([...keys].filter((one) => one !== key)) : new Set([...keys, key])
}

/** Does what is next, or opens what it needs. */
function doAct(act: NextAct, { send, open }: Pick<KitchenParts, 'send' | 'open'>): void {
  const command = kitchenCommand(act)
  if (command !== null) send(command)
  else if (act.portionId !== null) open({ kind: 'count', portionId: act.portionId })
}

/** A pad or pedal of a kitchen station does the first of its acts that stands in the bar. */
function useKitchenPedals(props: KitchenBoardProps, say: (text: string) => void): void {
  const { acts, keys, words, shop } = props
  usePedals<NextAct>(keys, false, {
    actOf: (station) => kitchenPedalAct(station, acts, new Set(actsInBar(acts).map(({ key }) => key))),
    onAct: (act) => doAct(act, props),
    onWhyNot: (station, why) => {
      const own = [...shop.kitchenStations.values()].find(({ id }) => kitchenPedal(id) === station)
      const { top } = words.bench
      if (own !== undefined) say(why === 'just-changed' ? top.pedalTooSoon : top.pedalNothing(own.name))
    },
  })
}
