import { epochMs } from '../../../shared-core/units.ts'
import type { PastWords } from '../../words/desk-past.ts'
import type { Words } from '../../words/words.ts'
import type { PlayedDay } from './day-record.ts'
import type { Playing } from './use-playing.ts'
import { PACES } from './use-playing.ts'

interface TimeKeysProps {
  readonly day: PlayedDay
  readonly playing: Playing
  readonly words: Words
  readonly say: PastWords
}

const MINUTE_MS = 60_000
const PAGE_MINUTES = 15

/** The ruler of the day as a slider, one minute a step, with its keys. */
export function TimeKeys({ day, playing, words, say }: TimeKeysProps) {
  const { replay } = say
  const { atMs, isPlaying, goTo } = playing
  const by = (minutes: number) => goTo(epochMs(atMs - (atMs % MINUTE_MS) + minutes * MINUTE_MS))
  return (
    <div class="desk-time">
      <div class="desk-line">
        <strong class="desk-time-now">{words.times.clock(atMs)}</strong>
        <button type="button" class="desk-strong" aria-pressed={isPlaying} onClick={playing.toggle}>
          {isPlaying ? replay.stop : replay.play}
        </button>
        <button type="button" aria-label={replay.minuteBack} onClick={() => by(-1)}>
          −1 min
        </button>
        <button type="button" aria-label={replay.minuteOn} onClick={() => by(1)}>
          +1 min
        </button>
        <label class="desk-line">
          {replay.pace}
          <select
            value={playing.pace}
            onChange={(event) => {
              const pace = PACES.find((one) => one === Number(event.currentTarget.value))
              if (pace !== undefined) playing.setPace(pace)
            }}
          >
            {PACES.map((pace) => (
              <option key={pace} value={String(pace)}>
                {pace / 1_000} s
              </option>
            ))}
          </select>
        </label>
      </div>
      <input
        type="range"
        class="desk-time-ruler"
        aria-label={replay.ruler}
        aria-valuetext={words.times.clock(atMs)}
        min={day.fromMs}
        max={day.toMs}
        step={MINUTE_MS}
        value={atMs}
        onInput={(event) => goTo(epochMs(event.currentTarget.valueAsNumber))}
        onKeyDown={(event) => {
          const minutes = event.key === 'PageUp' ? PAGE_MINUTES : event.key === 'PageDown' ? -PAGE_MINUTES : 0
          if (minutes === 0) return
          event.preventDefault()
          by(minutes)
        }}
      />
    </div>
  )
}
