import type { State } from '../../../shared-core/day/state.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import { Rod } from '../../parts/rod.tsx'
import type { PastWords } from '../../words/desk-past.ts'
import { stuffOf } from '../../words/names.ts'
import type { Words } from '../../words/words.ts'
import type { PlayedDay } from './day-record.ts'
import type { MomentOfDay } from './moment-view.ts'
import { momentOfDay } from './moment-view.ts'

interface ThenProps {
  readonly state: State
  readonly day: PlayedDay
  readonly atMs: EpochMs
  readonly words: Words
  readonly say: PastWords
}

const ROD_PX = 72
const RINGS = 8

/** The shop at the instant chosen: oven, line, rods, and the act that was done last. */
export function Then({ state, day, atMs, words, say }: ThenProps) {
  const { replay } = say
  const moment = momentOfDay(state, atMs)
  const last = day.replay.lastEntryAt(atMs)
  return (
    <section aria-label={replay.at(atMs)} class="desk-then">
      <h3>{replay.at(atMs)}</h3>
      <p class="desk-quiet">
        {last === null
          ? replay.nothingHappened
          : `${replay.last}: ${words.told.at(last.told, last.events[0]?.atMs ?? last.recordedAtMs)}`}
      </p>
      <div class="desk-columns">
        <div class="desk-grow">
          <h4>{replay.oven}</h4>
          <Oven moment={moment} words={words} say={say} />
        </div>
        <div class="desk-grow">
          <h4>{replay.line}</h4>
          <Standing moment={moment} words={words} say={say} />
        </div>
      </div>
      <h4>{replay.rods}</h4>
      <Rods moment={moment} say={say} />
    </section>
  )
}

interface PartProps {
  readonly moment: MomentOfDay
  readonly words: Words
  readonly say: PastWords
}

function Oven({ moment, words, say }: PartProps) {
  const { replay } = say
  return (
    <dl class="desk-pairs">
      {moment.oven.map(({ shelfId, loads }) => (
        <div key={shelfId}>
          <dt>{words.names.shelf(shelfId)}</dt>
          <dd class={loads.length === 0 ? 'desk-quiet' : undefined}>
            {loads.length === 0
              ? replay.empty
              : loads
                  .map(
                    ({ phase, sinceMs, lines }) =>
                      `${words.line.contents(lines)}, ${replay.phase[phase]} (${words.times.since(sinceMs)})`,
                  )
                  .join('; ')}
          </dd>
        </div>
      ))}
    </dl>
  )
}

function Standing({ moment, words, say }: PartProps) {
  if (moment.line.length === 0) return <p class="desk-quiet">{say.replay.nothingOnLine}</p>
  return (
    <dl class="desk-pairs">
      {moment.line.map(({ stage, what }) => (
        <div key={stage}>
          <dt>{say.replay.stage(stage)}</dt>
          <dd>{what.map((one) => `${stuffOf(one, words.names)} ${one.pieces}`).join(', ')}</dd>
        </div>
      ))}
    </dl>
  )
}

function Rods({ moment, say }: Pick<PartProps, 'moment' | 'say'>) {
  if (moment.rods.length === 0) return <p class="desk-quiet">{say.replay.noRods}</p>
  return (
    <ul class="desk-rods">
      {moment.rods.map(({ varietyId, name, forSale, cooling, kept }) => (
        <li key={varietyId}>
          <Rod pieces={forSale} onTheWay={cooling} kept={kept} maxRings={RINGS} height={ROD_PX} width={ROD_PX * 0.5} />
          <span class="desk-rod-text">
            <strong class="desk-rod-number">{forSale}</strong>
            <span class="desk-rod-name">{name}</span>
          </span>
        </li>
      ))}
    </ul>
  )
}
