import type { StoreApi } from 'zustand/vanilla'
import { createStore } from 'zustand/vanilla'
import type { Ask, Refusal } from '../../shared-core/day/answers.ts'
import type { Act, Command } from '../../shared-core/day/commands.ts'
import type { State } from '../../shared-core/day/state.ts'
import type { CommandId, DeviceId } from '../../shared-core/ids.ts'
import type { NotJoined } from '../../shared-core/live/devices.ts'
import type { Outlook } from '../../shared-core/live/outlook.ts'
import type { Plan } from '../../shared-core/live/plan.ts'
import type { Role, ScreenPresence, ShopClock } from '../../shared-core/live/protocol.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { clockText } from './clock-text.ts'
import { isCounting } from './counting.ts'
import type { DeviceSettings } from './device-settings.ts'
import { changedSettings, loadSettings, saveSettings } from './device-settings.ts'
import { ScreenSync } from './screen-sync.ts'
import type { SyncParts } from './sync-parts.ts'
import type { Timers } from './ticker.ts'
import { startTicker } from './ticker.ts'
import { unnamed } from './unnamed.ts'

/**
 * What a screen sees of the shop: three values feed it – what is shown (confirmed by the server, with this screen's own
 * unanswered taps decided on top), what is pending, and the server's time. Everything else is derived by views.
 *
 * @example in a component
 *   const key = useStore(store, ({ shown, nowMs }) => shown && shelfKey(shown, nowMs, shelfId))
 *   <button onClick={() => store.send({ type: 'flip', loadId })}>
 */
export interface ShopStore extends Pick<StoreApi<LiveState>, 'getState' | 'getInitialState' | 'subscribe'> {
  /** Names this device in the traces of what was done. */
  readonly deviceId: DeviceId
  /**
   * Does an act: makes the command, saves it, shows it at once, sends it when there is contact.
   * @returns the command's id, which a later take-back names; null when nothing could be done: no shop is shown yet, or
   * the queue is full (a notice says so).
   */
  send(act: Act): CommandId | null
  /** Answers a question with yes: the same command goes again, with every asked code confirmed. */
  confirm(noticeId: string): void
  /** Puts a notice away. A question that is put away is answered with no: its command is not done. */
  dismiss(noticeId: string): void
  /** "Coming": the sound of this act rests for a moment on every screen. Nothing is logged. */
  sayComing(actKey: string): void
  /** Local time of an instant in the shop, "6:47"; "" before the server's clock table is known. */
  localTime(atMs: EpochMs): string
  changeSettings(change: Partial<DeviceSettings>): void
  /** Any touch or key on this screen: a reload for a new version waits until it has been left alone. */
  touched(): void
  /** The page was shown or hidden: a hidden page does not tick, a shown one asks for the time anew. */
  visibilityChanged(): void
  /** Ends the connection and the timers. */
  stop(): void
}

export interface LiveState {
  /**
   * Null until the first welcome. A new, never changing object whenever anything in it changed. While loads are advised,
   * these stand in its list of planned ones.
   */
  readonly shown: State | null
  /** The same with only those loads that people set: for where their list is edited. */
  readonly asSet: State | null
  readonly connection: Connection
  /** Own taps that the server has not answered yet, oldest first: the screen is guessing about these. */
  readonly pending: readonly PendingCommand[]
  /** What a person should know or answer, oldest first. They survive a reload until put away. */
  readonly notices: readonly Notice[]
  /** The server's time: anew each second, four times a second while something is about to be due, and at each change. */
  readonly nowMs: EpochMs
  /** How far `nowMs` may be off, ±; null when the server's clock has not been heard yet. */
  readonly clockErrorMs: number | null
  readonly shopClock: ShopClock | null
  /** Acts that somebody is on the way to, and until when their sound rests. */
  readonly coming: ReadonlyMap<string, EpochMs>
  readonly screens: readonly ScreenPresence[]
  /** What the rest of today will probably bring, as last told; a screen shows it through `freshOutlook`. Null: no advice. */
  readonly outlook: Outlook | null
  /** Which loads when, as last told; null: no advice. `shown` follows it already. */
  readonly plan: Plan | null
  readonly demo: { readonly handsOff: boolean } | null
  /** The server's version, for people; "" before the first welcome. */
  readonly version: string
  /** The server has a newer page than this one, which is loaded when this screen has been left alone. */
  readonly isOutdated: boolean
  readonly settings: DeviceSettings
}

export type Connection =
  /** Nothing to show yet. */
  | { readonly phase: 'connecting'; readonly sinceMs: EpochMs }
  /** Linked and up to date. */
  | { readonly phase: 'live'; readonly sinceMs: EpochMs }
  /** Linked again, fetching what was missed. */
  | { readonly phase: 'catching-up'; readonly sinceMs: EpochMs }
  /** No contact; countdowns go on, taps are kept and sent later. */
  | { readonly phase: 'away'; readonly sinceMs: EpochMs }
  /** The server speaks a newer form than this page: what is shown stands still until the page is loaded anew. */
  | { readonly phase: 'stale'; readonly sinceMs: EpochMs }
  /** The server does not let this device in, or not as this screen; taps are kept, and it asks again now and then. */
  | { readonly phase: 'outside'; readonly sinceMs: EpochMs; readonly why: Turned }

/** `moved`: this device is another screen by now, whose page it goes to. */
export type Turned = NotJoined | 'moved'

export interface PendingCommand {
  readonly command: Command
  /** What this screen expects the answer to be; only `taken` is in `shown`. */
  readonly guess: 'taken' | 'ask' | 'refused'
}

export type Notice = { readonly id: string; readonly atMs: EpochMs } & (
  | { readonly kind: 'refused'; readonly command: Command; readonly refusal: Refusal }
  | { readonly kind: 'ask'; readonly command: Command; readonly asks: readonly Ask[] }
  /** Nothing more is taken until there is contact again. */
  | { readonly kind: 'queue-full'; readonly most: number }
  /** This device could not write to its own store: taps go out, but unanswered ones would not survive a reload. */
  | { readonly kind: 'not-saved' }
  /** Taps for another shop that was served here before; they stay on this device until that shop is back. */
  | { readonly kind: 'kept-aside'; readonly journalId: string; readonly commands: number }
  /** Taps that this device made as another screen, before it was moved; they go out when it is that again. */
  | { readonly kind: 'left-behind'; readonly role: Role; readonly commands: number }
  /** This screen had reckoned something else than the server and has fetched the state anew. */
  | { readonly kind: 'fetched-anew'; readonly seq: number; readonly reason: 'hash' | 'fault' | 'server-behind' }
)

export interface StoreParts extends Omit<SyncParts, 'onChange' | 'device' | 'named'> {
  readonly role: Role
  readonly timers: Timers
  readonly isHidden: () => boolean
}

/** How often the connection is looked after; its waits are seconds long. */
const BEAT_MS = 1_000

/** The store of one screen, connected and ticking. `startScreen` gives it a page's parts. */
export function createShopStore(parts: StoreParts): ShopStore {
  const { role, saved, timers } = parts
  let settings = loadSettings(saved, role)
  const device = () => ({ name: settings.name, role, stationId: settings.stationId })
  const change = (to: Partial<DeviceSettings>) => {
    settings = changedSettings(settings, to)
    saveSettings(saved, settings)
    store.setState({ settings })
  }
  // What it calls itself while nobody has named it is no name.
  const named = ({ name, stationId }: Pick<DeviceSettings, 'name' | 'stationId'>) =>
    change({ stationId, name: name === unnamed(role, sync.deviceId) ? '' : name })
  const sync = new ScreenSync({ ...parts, device, named, onChange: () => store.setState(now()) })
  const now = (): LiveState => {
    const { serverClock } = sync
    return { ...sync.view(), nowMs: serverClock.serverNowMs(), clockErrorMs: serverClock.errorMs(), settings }
  }
  const store = createStore<LiveState>(now)
  const serverNowMs = () => sync.serverClock.serverNowMs()
  const ticker = startTicker({
    ...parts,
    serverNowMs,
    speed: () => sync.serverClock.speed,
    onTick: () => store.setState({ nowMs: serverNowMs(), clockErrorMs: sync.serverClock.errorMs() }),
    isCounting: () => {
      const { shown } = store.getState()
      return shown !== null && isCounting(shown, serverNowMs())
    },
  })
  const beat = startBeat(timers, () => sync.tick())

  return {
    getState: store.getState,
    getInitialState: store.getInitialState,
    subscribe: store.subscribe,
    deviceId: sync.deviceId,
    send: (act) => sync.send(act),
    confirm: (noticeId) => sync.confirm(noticeId),
    dismiss: (noticeId) => sync.dismiss(noticeId),
    sayComing: (actKey) => sync.sayComing(actKey),
    touched: () => sync.touched(),
    localTime: (atMs) => {
      const { shopClock, shown } = store.getState()
      return shopClock === null ? '' : clockText(shopClock, atMs, shown?.shop?.profile.clock ?? 12)
    },
    changeSettings: (to) => {
      const before = settings
      change(to)
      if (settings.name !== before.name || settings.stationId !== before.stationId) sync.deviceChanged()
    },
    visibilityChanged: () => {
      if (!parts.isHidden()) sync.woke()
      ticker.reset()
    },
    stop: () => {
      ticker.stop()
      beat.stop()
      sync.close()
    },
  }
}

function startBeat(timers: Timers, run: () => void): { stop(): void } {
  let timer = timers.set(again, BEAT_MS)
  function again(): void {
    timer = timers.set(again, BEAT_MS)
    run()
  }
  return { stop: () => timers.clear(timer) }
}
