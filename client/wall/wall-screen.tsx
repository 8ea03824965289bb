import { useCallback, useEffect, useMemo, useState } from 'preact/hooks'
import type { State } from '../../shared-core/day/state.ts'
import type { StationId } from '../../shared-core/ids.ts'
import type { KitchenActDue } from '../../shared-core/kitchen/kitchen-acts.ts'
import { actCommand } from '../../shared-core/line/act-command.ts'
import type { LineActDue } from '../../shared-core/line/act-due.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { epochMs } from '../../shared-core/units.ts'
import type { LiveState, ShopStore } from '../live/shop-store.ts'
import { COMING_KEY, kitchenPedal, pedalAct, soundingAct, soundingRoomAct } from '../parts/calls.ts'
import { useGlassSize } from '../parts/glass-size.ts'
import { kitchenCommand, kitchenPedalAct, soundingKitchenAct } from '../parts/kitchen-calls.ts'
import { ScreenSize } from '../parts/screen-size.tsx'
import { useFetched } from '../parts/use-fetched.ts'
import { useFlash } from '../parts/use-flash.ts'
import { useLive } from '../parts/use-live.ts'
import { usePedals } from '../parts/use-pedals.ts'
import { useSound } from '../parts/use-sound.ts'
import { capitalised } from '../words/joined.ts'
import { wallWords } from '../words/wall.ts'
import { wallDoughWords } from '../words/wall-dough.ts'
import { wallKitchenWords } from '../words/wall-kitchen.ts'
import { languageOf, wordsFor } from '../words/words.ts'
import { actInSentence, actName, namingOf } from './act-name.ts'
import { roomActInSentence } from './room-act-name.ts'
import { SettingsLater } from './settings-later.tsx'
import { NOTICE_SHOWN_MS } from './status-view.ts'
import type { SlowView, WallInput, WallView } from './view.ts'
import { SLOW_MS, slowView, wallView } from './view.ts'
import { WallBoard } from './wall-board.tsx'

/** The screen over the boiler. */
export function WallScreen({ store }: { readonly store: ShopStore }) {
  const live = useLive(store)
  const glass = useGlassSize()
  const panel = {
    diagonalInch: live.settings.diagonalInches,
    widthPx: glass.screenWidthPx,
    heightPx: glass.screenHeightPx,
  }
  const [flash, say] = useFlash()
  const [isSettingUp, setSettingUp] = useState(false)
  const [soundState, setSoundState] = useState<WallInput['sound']>('on')
  const localTime = useCallback((atMs: EpochMs) => store.localTime(atMs), [store])
  const shop = live.shown?.shop ?? null
  const language = languageOf(live.settings.language, shop)
  const words = useMemo(() => {
    const shared = wordsFor(language, shop, localTime)
    return { shared, wall: wallWords(shared) }
  }, [language, shop, localTime])
  const slow = useSlowView(live)
  const view = wallView({ live, slow, localTime, panel, page: glass, flash, sound: soundState })
  const sound = useSound(live, view.acts, view.room, view.kitchen)
  useEffect(() => setSoundState(sound.state), [sound.state])
  const hands = handsOf({ store, live, view, say, words })
  usePedals(live.settings.keys, isSettingUp, hands)
  useWallKeys(live, isSettingUp, () => setSettingUp(true))
  useTidyNotices(store, live)
  const close = useCallback(() => setSettingUp(false), [])
  return (
    <ScreenSize panel={panel} distanceM={live.settings.viewingMetres}>
      <div lang={language} onPointerDown={isSettingUp ? undefined : hands.onTouch}>
        <WallBoard
          view={view}
          localTime={localTime}
          shopClock={live.shopClock}
          rulerName={words.wall.ruler.spoken}
          settingsName={words.wall.thisScreen}
          onClock={() => setSettingUp(true)}
          onClearNote={(noteId) => store.send({ type: 'clearNote', noteId })}
        />
      </div>
      {isSettingUp && (
        <SettingsLater
          store={store}
          live={live}
          shop={shop}
          words={words.shared}
          panel={panel}
          onTrySound={sound.tryOut}
          onClose={close}
        />
      )}
    </ScreenSize>
  )
}

const fetchLooks = () => import('./looks.ts')

/** Reckoned when something happens, and every few seconds else. */
function useSlowView({ shown, shopClock, nowMs, settings, outlook, plan }: LiveState): SlowView {
  const looks = useFetched(fetchLooks, shown !== null && mayHaveOrders(shown))
  const atMs = epochMs(nowMs - (nowMs % SLOW_MS))
  return useMemo(
    () => slowView({ shown, shopClock, nowMs: atMs, settings, outlook, plan }, looks),
    [shown, shopClock, atMs, settings, outlook, plan, looks],
  )
}

function mayHaveOrders({ shop, orders, standing }: State): boolean {
  return orders.size + standing.size + (shop?.kitchenStations.size ?? 0) > 0
}

interface HandsParts {
  readonly store: ShopStore
  readonly live: LiveState
  readonly view: WallView
  readonly say: (text: string) => void
  readonly words: { readonly shared: ReturnType<typeof wordsFor>; readonly wall: ReturnType<typeof wallWords> }
}

/** What pedals and touches do here. */
function handsOf({ store, live, view, say, words: { shared, wall } }: HandsParts) {
  const { shown, coming, nowMs } = live
  const sayComing = (act: LineActDue) => {
    store.sayComing(act.key)
    say(wall.bar.coming(actName(act, shared, namingOf(shown?.shop ?? null))))
  }
  return {
    actOf: (station: StationId) => {
      if (station === COMING_KEY) return soundingAct(view.acts, coming, nowMs)
      const ofKitchen = kitchenPedalAct(station, view.kitchen, new Set(view.onShow))
      if (ofKitchen !== null || shown === null) return ofKitchen
      return pedalAct(station, shown, { acts: view.acts, onShow: new Set(view.onShow) })
    },
    onAct: (act: LineActDue | KitchenActDue, station?: StationId) => {
      if (isOfKitchen(act)) {
        const command = kitchenCommand(act)
        if (command !== null && store.send(command) !== null)
          say(wall.bar.done(wallKitchenWords(shared).acts.act(act)[1]))
        return
      }
      if (station === COMING_KEY) return sayComing(act)
      const command = shown === null ? null : actCommand(act, shown)
      if (command !== null && store.send(command) !== null)
        say(wall.bar.done(actInSentence(act, shared, namingOf(shown?.shop ?? null))))
    },
    onWhyNot: (station: StationId, why: 'just-changed' | 'nothing-to-do') => {
      if (station === COMING_KEY) return
      const own = [...(shown?.shop?.kitchenStations.values() ?? [])].find(({ id }) => kitchenPedal(id) === station)
      const name = own?.name ?? shared.names.station(station)
      say(why === 'just-changed' ? wall.bar.justChanged : wall.bar.nothingFor(name))
    },
    /** A touch anywhere but on a key says "coming". */
    onTouch: ({ target }: { readonly target: EventTarget | null }) => {
      if (target instanceof Element && target.closest('button') !== null) return
      const act = soundingAct(view.acts, coming, nowMs)
      if (act !== null) return sayComing(act)
      const ofKitchen = soundingKitchenAct(view.kitchen, coming, nowMs)
      if (ofKitchen !== null) {
        store.sayComing(ofKitchen.key)
        return say(wall.bar.coming(capitalised(wallKitchenWords(shared).acts.act(ofKitchen)[1])))
      }
      const dough = soundingRoomAct(view.room, coming, nowMs)
      if (dough === null || shown === null) return
      store.sayComing(dough.key)
      say(wall.bar.coming(capitalised(roomActInSentence(dough, shown, wallDoughWords(shared)))))
    },
  }
}

function isOfKitchen(act: LineActDue | KitchenActDue): act is KitchenActDue {
  return 'parts' in act
}

/** `s` opens the settings, unless a pedal is tied to it. */
function useWallKeys(live: LiveState, isSettingUp: boolean, open: () => void): void {
  const { keys } = live.settings
  useEffect(() => {
    if (isSettingUp) return
    const onKey = (event: KeyboardEvent) => {
      if (event.code === 'KeyS' && !event.repeat && keys[event.code] === undefined) open()
    }
    window.addEventListener('keydown', onKey)
    return () => window.removeEventListener('keydown', onKey)
  })
}

/** Nobody comes to a wall to put a refusal away: it goes by itself once it has been read. */
function useTidyNotices(store: ShopStore, { notices, nowMs }: LiveState): void {
  useEffect(() => {
    for (const { id, kind, atMs } of notices) {
      const isPassing = kind === 'refused' || kind === 'fetched-anew'
      if (isPassing && nowMs - atMs >= NOTICE_SHOWN_MS) store.dismiss(id)
    }
  }, [store, notices, nowMs])
}
