import type { EpochMs } from '../../../shared-core/units.ts'
import type { PastWords } from '../../words/desk-past.ts'
import type { Words } from '../../words/words.ts'
import type { PlayedDay } from './day-record.ts'

interface GapsListProps {
  readonly day: PlayedDay
  readonly words: Words
  readonly say: PastWords
  readonly onGo: (atMs: EpochMs) => void
}

/** What ran out when; each leads to its instant. */
export function GapsList({ day, words, say, onGo }: GapsListProps) {
  if (day.gaps.length === 0) return <p class="desk-quiet">{say.replay.noGaps}</p>
  return (
    <ul class="desk-gaps">
      {day.gaps.map((gap) => (
        <li key={`${gap.varietyId} ${gap.fromMs}`}>
          <button type="button" onClick={() => onGo(gap.fromMs)}>
            {say.replay.gap(words.names.variety(gap.varietyId), gap.fromMs, gap.toMs)}
          </button>
        </li>
      ))}
    </ul>
  )
}
