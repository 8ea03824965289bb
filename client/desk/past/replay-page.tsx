import { useMemo } from 'preact/hooks'
import type { DayFigures } from '../../../shared-core/day/figures.ts'
import { shelvesInOrder } from '../../../shared-core/line/turn.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import { epochMs } from '../../../shared-core/units.ts'
import { clockText } from '../../live/clock-text.ts'
import { deskWords } from '../../words/desk.ts'
import { daySheetWords } from '../../words/desk-day-sheet.ts'
import { pastWords } from '../../words/desk-past.ts'
import { wordsFor } from '../../words/words.ts'
import type { PlaceParts } from '../desk-screen.tsx'
import { Panel } from '../panel.tsx'
import { DayFiles } from '../sheet/day-files.tsx'
import { reportOfClosed, reportOfOpen } from '../sheet/day-report.ts'
import { DaySheet } from '../sheet/day-sheet.tsx'
import { FiguresList } from '../sheet/figures-list.tsx'
import { figureTexts } from '../sheet/figures-view.ts'
import { useGot } from '../use-got.ts'
import type { PlayedDay } from './day-record.ts'
import { GapsList } from './gaps-list.tsx'
import { Lanes } from './lanes.tsx'
import { Then } from './then.tsx'
import { TimeKeys } from './time-keys.tsx'
import { usePlaying } from './use-playing.ts'

/** A past day at any instant of it. Its times are told by the clock as it was then, its names by the set-up of then. */
export function ReplayPage({ day, live, words: now }: PlaceParts & { readonly day: PlayedDay }) {
  const shop = day.end.shop
  const words = useMemo(() => {
    const hours = shop?.profile.clock ?? 12
    return deskWords(wordsFor(now.language, shop, (atMs) => clockText(day.clock, atMs, hours)))
  }, [now.language, shop, day])
  const say = useMemo(() => pastWords(words), [words])
  const sheet = useMemo(() => daySheetWords(words), [words])
  const playing = usePlaying(day, startOf(day))
  const state = day.replay.stateAt(playing.atMs)
  const shelfIds = useMemo(() => (shop === null ? [] : shelvesInOrder(day.end, shop).map(({ id }) => id)), [day, shop])
  const label = day.closedAtMs === null ? 'today' : day.label
  const got = useGot<{ readonly figures: DayFigures | null }>(`/api/v1/days/${label}/figures?opened=${day.openedAtMs}`)
  const figures = got.kind === 'got' ? got.value.figures : null
  const { lastDay } = day.end
  const report =
    lastDay?.openedAtMs === day.openedAtMs ? reportOfClosed(lastDay, figures, []) : reportOfOpen(day.end, figures, [])
  return (
    <>
      <div class="desk-noprint">
        <Panel part="replay" title={say.replay.title(day.label)}>
          <TimeKeys day={day} playing={playing} words={words} say={say} />
          <h3>{say.replay.lanes}</h3>
          <Lanes day={day} shelfIds={shelfIds} atMs={playing.atMs} words={words} say={say} onMove={playing.goTo} />
          <p class="desk-quiet desk-small">{say.replay.hint}</p>
          <Then state={state} day={day} atMs={playing.atMs} words={words} say={say} />
        </Panel>
        <Panel part="gaps" title={say.replay.gapsTitle}>
          <GapsList day={day} words={words} say={say} onGo={playing.goTo} />
        </Panel>
        <Panel part="figures" title={sheet.figures.title}>
          {figures === null ? (
            <p class="desk-quiet">{got.kind === 'no-contact' ? sheet.figures.noContact : sheet.figures.waiting}</p>
          ) : (
            <FiguresList figures={figureTexts(figures, sheet, words.names)} />
          )}
          <DayFiles label={label} openedAtMs={day.openedAtMs} say={sheet} />
        </Panel>
      </div>
      {report !== null && (
        <DaySheet report={report} shopName={live.shown?.shop?.profile.name ?? ''} words={words} say={sheet} />
      )}
    </>
  )
}

/** Half an hour after opening there is something to see. */
const LOOK_MS = 30 * 60_000

function startOf({ fromMs, toMs, open }: PlayedDay): EpochMs {
  return epochMs(Math.min(toMs, Math.max(fromMs, open.fromMs + LOOK_MS)))
}
