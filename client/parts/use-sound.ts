import { useEffect, useMemo, useRef, useState } from 'preact/hooks'
import type { RoomAct } from '../../shared-core/dough/room-acts.ts'
import type { KitchenActDue } from '../../shared-core/kitchen/kitchen-acts.ts'
import type { LineActDue } from '../../shared-core/line/act-due.ts'
import { minuteOfDay } from '../live/clock-text.ts'
import type { LiveState } from '../live/shop-store.ts'
import { isWorthASound, roomSound } from './calls.ts'
import { kitchenSound } from './kitchen-calls.ts'
import type { SoundDesk, SoundingAct } from './sound-desk.ts'
import { isQuietHour, SILENT_DESK, soundNow } from './sound-desk.ts'
import { figureOf } from './sound-figures.ts'
import type { SoundPlayer } from './sound-player.ts'
import { soundPlayer } from './sound-player.ts'

/** `needs-touch`: sound is wanted, and the browser gives none before somebody has touched the page. */
export type SoundState = 'on' | 'needs-touch' | 'off' | 'quiet-hours'

export interface ScreenSound {
  readonly state: SoundState
  /** Plays the figure of a flip, so that somebody can set the volume. */
  readonly tryOut: () => void
}

/** Sounds what is due at the line, at the second menu's oven and in the dough room, one at a time, by the device's volume and quiet hours; says why it is silent where it is. */
export function useSound(
  live: LiveState,
  acts: readonly LineActDue[],
  room: readonly RoomAct[] = NO_ROOM,
  kitchen: readonly KitchenActDue[] = NO_KITCHEN,
): ScreenSound {
  const player = usePlayer()
  const desk = useRef<SoundDesk>(SILENT_DESK)
  const { nowMs, coming, settings, shopClock } = live
  const isQuiet = shopClock !== null && isQuietHour(minuteOfDay(shopClock, nowMs), settings.quiet)
  useEffect(() => {
    const ofLine = acts
      .filter(isWorthASound)
      .map(({ key, act, atMs, status }) => ({ key, act, atMs, isLate: status === 'late' }))
    // What burns goes first: dough waits for an oven, an oven for nobody.
    const sounding = [...ofLine, ...kitchen.flatMap((one) => ofKitchen(one, nowMs)), ...room.flatMap(ofRoom)]
    // What nobody can hear yet is not counted as heard: the first touch brings the first of the close calls.
    const isMute = player === null || player.needsTouch()
    const volume = isMute ? 0 : settings.volumePercent / 100
    const now = { acts: sounding, nowMs, quietedUntilMs: coming, isQuiet, volume }
    const answer = soundNow(desk.current, now)
    desk.current = answer.desk
    if (answer.stop) player?.stop()
    if (answer.play !== null) player?.play(answer.play.figure, answer.play.volume)
  }, [acts, room, kitchen, nowMs, coming, isQuiet, settings.volumePercent, player])
  const isOff = settings.volumePercent === 0
  const state = isOff || player === null ? 'off' : isQuiet ? 'quiet-hours' : player.needsTouch() ? 'needs-touch' : 'on'
  return { state, tryOut: () => player?.play(figureOf('flip', false), settings.volumePercent / 100) }
}

const NO_ROOM: readonly RoomAct[] = []
const NO_KITCHEN: readonly KitchenActDue[] = []

function ofKitchen(one: KitchenActDue, nowMs: LiveState['nowMs']): readonly SoundingAct[] {
  const act = kitchenSound(one, nowMs)
  return act === null ? [] : [{ key: one.key, act, atMs: one.atMs, isLate: one.status === 'late' }]
}

function ofRoom(one: RoomAct): readonly SoundingAct[] {
  const act = roomSound(one)
  return act === null ? [] : [{ key: one.key, act, atMs: one.atMs, isLate: one.status === 'late' }]
}

/** The page's one player; any touch or key wakes it, as browsers ask for. Null where there is no sound at all. */
function usePlayer(): SoundPlayer | null {
  const [, setWoken] = useState(0)
  const parts = useMemo(() => {
    if (typeof AudioContext === 'undefined') return null
    const context = new AudioContext()
    return { context, player: soundPlayer(context) }
  }, [])
  useEffect(() => {
    if (parts === null) return
    const { context, player } = parts
    const onState = () => setWoken((count) => count + 1)
    context.addEventListener('statechange', onState)
    window.addEventListener('pointerdown', player.wake)
    window.addEventListener('keydown', player.wake)
    return () => {
      context.removeEventListener('statechange', onState)
      window.removeEventListener('pointerdown', player.wake)
      window.removeEventListener('keydown', player.wake)
      player.stop()
    }
  }, [parts])
  return parts?.player ?? null
}
