import { useState } from 'preact/hooks'
import type { Act } from '../../shared-core/day/commands.ts'
import type { StationId } from '../../shared-core/ids.ts'
import { actCommand } from '../../shared-core/line/act-command.ts'
import { epochMs } from '../../shared-core/units.ts'
import { COMING_KEY, kitchenPedal, pedalAct, soundingAct } from '../parts/calls.ts'
import { offsetMsAt } from '../parts/ruler-of-day.ts'
import { textWidthPx } from '../parts/text-width.ts'
import { useEscape } from '../parts/use-escape.ts'
import { useFlash } from '../parts/use-flash.ts'
import { useIdleClose } from '../parts/use-idle-close.ts'
import { usePedals } from '../parts/use-pedals.ts'
import { useSound } from '../parts/use-sound.ts'
import { useWipeLock, WipeLock } from '../parts/wipe-lock.tsx'
import { settingsWords } from '../words/settings.ts'
import { actOfShelf } from './act-of-shelf.ts'
import type { BoardProps } from './bench-screen.tsx'
import type { BottomBarProps } from './bottom-bar.tsx'
import { BottomBar } from './bottom-bar.tsx'
import { actsOnShow } from './calls.ts'
import { Joint } from './joint.tsx'
import type { BenchLayout } from './layout.ts'
import { benchLayout } from './layout.ts'
import { Line } from './line.tsx'
import { HEADING_EM, kettleMiddlePx, linePlan, TEXT_EM } from './line-plan.ts'
import type { StationKey } from './line-view.ts'
import { Oven } from './oven.tsx'
import { sheetRoom } from './sheet.tsx'
import type { OpenSheet } from './sheets/open-sheet.ts'
import { SheetOver } from './sheets/sheet-over.tsx'
import type { ShelfView } from './shelf-view.ts'
import { isDoughRoomTime } from './shift-key.ts'
import { soundingNow } from './sounding.ts'
import { TOP_LINES, TopBand } from './top-band.tsx'
import { useKitchen } from './use-kitchen.ts'
import { useRoomActs } from './use-room-acts.ts'
import type { BenchView } from './view.ts'
import { benchView } from './view.ts'

/** Of the top band's width, what the words beside the time may take; `bench.css` has the same. */
const DAY_SHARE = 0.4

/** The line, drawn; or the sheet that lies over it. */
export function BenchBoard(props: BoardProps) {
  const { store, live, state, shop, words, sizes, glass } = props
  const [sheet, setSheet] = useState<OpenSheet | null>(() => firstSheet(props))
  const foundRoomActs = useRoomActs(live, state, shop)
  const kitchen = useKitchen(live, state)
  const view = benchView({ live, state, shop, words, deviceId: store.deviceId, foundRoomActs, kitchen })
  const layout = benchLayout({
    widthPx: glass.widthPx,
    heightPx: glass.heightPx,
    mmPx: sizes.mmPx,
    shelves: view.shelfPlaces,
    topHeightPx: Math.ceil(TOP_LINES * sizes.minPx * TEXT_EM),
    headingPx: Math.ceil(sizes.minPx * HEADING_EM),
    actWidthPx: Math.max(0, ...view.shelfActs.map((act) => textWidthPx(act, sizes.labelPx, 'strong'))),
  })
  const send = (act: Act) => void store.send(act)
  const [undone, sayUndone] = useFlash()
  const sound = useSound(live, view.acts, view.roomActs, view.kitchenActs)
  const wipe = useWipeLock()
  const closeSheet = () => setSheet(null)
  // Dough room and kitchen stand in place of the line, and look after their own pages.
  const isOver = sheet !== null && sheet.kind !== 'dough-room' && sheet.kind !== 'kitchen'
  useIdleClose(isOver, closeSheet)
  useEscape(isOver ? closeSheet : null)
  const flash = useLinePedals(props, view, sheet !== null)
  if (sheet !== null) {
    return (
      <SheetOver
        {...props}
        view={view}
        kitchen={kitchen}
        room={sheetRoom(glass, layout)}
        sheet={sheet}
        open={setSheet}
        onClose={closeSheet}
        send={send}
        onTrySound={sound.tryOut}
        onWipe={() => {
          setSheet(null)
          wipe.lock()
        }}
      />
    )
  }
  // An answer to a tap is more than a sound that is missing.
  const said =
    flash ?? (sound.state === 'needs-touch' && live.notices.length === 0 ? words.bench.top.touchForSound : null)
  return (
    <>
      <LineBoard
        {...props}
        view={view}
        layout={layout}
        flash={said}
        undone={undone}
        sayUndone={sayUndone}
        send={send}
        open={setSheet}
      />
      <WipeLock leftMs={wipe.leftMs} mmPx={sizes.mmPx} words={settingsWords(words).comfort} onEnd={wipe.end} />
    </>
  )
}

/** What the tablet opens on: the kitchen where it is for that, the dough room while the line rests, else the line. */
function firstSheet({ live, state, shop }: BoardProps): OpenSheet | null {
  const isForKitchen = live.settings.kitchen.some((id) => shop.kitchenStations.get(id)?.retired === false)
  if (isForKitchen) return { kind: 'kitchen' }
  return isDoughRoomTime(state) ? { kind: 'dough-room' } : null
}

function boardStyle({ marginPx, gapPx, keyPx, topHeightPx }: BenchLayout) {
  return {
    '--margin': `${marginPx}px`,
    '--gap': `${gapPx}px`,
    '--key': `${keyPx}px`,
    '--top-height': `${topHeightPx}px`,
  }
}

/** Pedals do what can be read here and say why when they do not. @returns what to say for a moment */
function useLinePedals(
  { store, live, state, shop, words }: BoardProps,
  view: BenchView,
  isAway: boolean,
): string | null {
  const [flash, say] = useFlash()
  const shown = { acts: view.acts, onShow: actsOnShow(view.shelves, view.line) }
  const sounding = soundingAct(view.acts, live.coming, live.nowMs)
  const dueAt = (station: StationId) => (station === COMING_KEY ? sounding : pedalAct(station, state, shown))
  usePedals(live.settings.keys, isAway, {
    actOf: dueAt,
    onAct: (due, station) => {
      if (station === COMING_KEY) return store.sayComing(due.key)
      const act = actCommand(due, state)
      if (act !== null) store.send(act)
    },
    onWhyNot: (station, why) => {
      const { top } = words.bench
      const ofKitchen = [...shop.kitchenStations.values()].find(({ id }) => kitchenPedal(id) === station)
      const name = station === COMING_KEY ? top.coming : (ofKitchen?.name ?? words.names.station(station))
      say(why === 'just-changed' ? top.pedalTooSoon : top.pedalNothing(name))
    },
  })
  return flash
}

interface LineBoardProps extends BoardProps {
  readonly view: BenchView
  readonly layout: BenchLayout
  /** Words that stand for a moment in place of what was done last. */
  readonly flash: string | null
  /** What has just been taken back, for a moment. */
  readonly undone: string | null
  readonly sayUndone: (text: string) => void
  readonly send: (act: Act) => void
  readonly open: (sheet: OpenSheet) => void
}

function LineBoard(props: LineBoardProps) {
  const { store, live, state, words, sizes, view, layout, send, open } = props
  const [isDiffering, setIsDiffering] = useState(false)
  const differs = (sheet: OpenSheet) => {
    setIsDiffering(false)
    open(sheet)
  }
  const onPress = (act: Act | null, sheet: OpenSheet) => {
    if (isDiffering || act === null) differs(sheet)
    else send(act)
  }
  const parts = { layout, sizes, words }
  const plan = linePlan(view.line, layout, sizes)
  const kettleIsKey = view.line.kettleKey !== null
  return (
    <main class={`bench-board bench-board-${layout.form}`} style={boardStyle(layout)} data-differing={isDiffering}>
      <TopBand
        {...parts}
        day={view.day}
        roomPx={(layout.form === 'stacked' ? 1 : DAY_SHARE) * (props.glass.widthPx - 2 * layout.marginPx)}
        clockText={(ms) => store.localTime(epochMs(ms))}
        offsetAtMs={(ms) => (live.shopClock === null ? 0 : offsetMsAt(live.shopClock, ms))}
      />
      <div class="bench-middle">
        <Line
          {...parts}
          line={view.line}
          plan={plan}
          onPress={(station) => onPress(station.act, sheetOf(station))}
          onDiffers={(station) => differs(sheetOf(station))}
        />
        <Joint
          layout={layout}
          fromPx={kettleMiddlePx(plan, layout, { ...sizes, kettleIsKey })}
          leadPx={plan.isSideBySide && !kettleIsKey ? (plan.columnPx - plan.kettleRingPx) / 2 : 0}
          headingPx={layout.hasOvenHeading ? Math.ceil(sizes.minPx * HEADING_EM) : 0}
          shelves={view.shelves.length}
        />
        <Oven
          {...parts}
          shelves={view.shelves}
          heading={view.ovenHeading}
          onPress={(shelf) => onPress(actOfShelf(state, shelf.key), contentsOf(shelf))}
          onDiffers={(shelf) => differs(contentsOf(shelf))}
        />
      </div>
      <Bottom
        {...props}
        differs={
          layout.differsBeside && !plan.isPaired
            ? null
            : { isOn: isDiffering, onPress: () => setIsDiffering(!isDiffering) }
        }
      />
    </main>
  )
}

function Bottom(props: LineBoardProps & Pick<BottomBarProps, 'differs'>) {
  const { store, live, words, sizes, view, flash, undone, sayUndone, send, open, differs } = props
  const notice = live.notices[live.notices.length - 1]
  const sounding = soundingNow(view, live, words)
  return (
    <BottomBar
      words={words}
      sizes={sizes}
      lastDone={view.lastDone}
      undone={undone}
      flash={flash}
      notice={notice === undefined ? null : words.live.notice(notice)}
      dry={view.dry.length}
      sounding={sounding?.name ?? null}
      differs={differs}
      onTakeBack={({ commandId, text }) => {
        send({ type: 'takeBack', commandId })
        sayUndone(words.bench.done.takenBack(text))
      }}
      shift={view.shiftKey}
      onShift={({ act, sheet }) => (act === null ? open(sheet) : send(act))}
      onDone={() => open({ kind: 'done' })}
      onDry={() => open({ kind: 'dry-hands' })}
      onMore={() => open({ kind: 'more' })}
      onComing={() => sounding !== null && store.sayComing(sounding.key)}
    />
  )
}

function contentsOf({ key }: ShelfView): OpenSheet {
  const { shelfId, loadId, plannedId, lines } = key
  return { kind: 'contents', start: { shelfId, loadId, plannedId, lines } }
}

function sheetOf({ which, act }: StationKey): OpenSheet {
  if (which === 'board') return { kind: 'board', lines: act?.type === 'board' ? act.lines : [] }
  return { kind: 'dough', job: which === 'pull' ? 'pull' : 'dip' }
}
