import type { Plan } from '../../../shared-core/live/plan.ts'
import type { BakePlanWords } from '../../words/desk-plan.ts'
import { Panel } from '../panel.tsx'
import type { DayParts } from './parts.ts'

/** The day in one look: how much, when it begins and ends, what it brings, and what is tightest. */
export function HeadPanel({ plan, date, say, words, shown }: DayParts) {
  const { head } = say
  const { figures } = plan
  const { profitCents, wavesProfitCents, crewMinutes, firstKettleAtMs, lastOutAtMs } = figures
  const risks = [head.lost(round(figures.lost)), head.left(round(figures.left))]
  if (round(figures.missing) > 0) risks.push(head.missing(round(figures.missing)))
  const loadOf = (id: string) => {
    const load = plan.loads.find((one) => one.id === id)
    return load === undefined ? '' : say.load(words.line.shelf(load.shelfId), load.inAtMs)
  }
  return (
    <Panel part="plan-head" title={head.title(words.times.date(date))} isWide>
      <dl class="plan-figures">
        <Figure label={head.labels.bake} note={head.age(round(figures.ageMinutes))}>
          {head.baked(figures.baked, shown.length)}
        </Figure>
        <Figure label={head.labels.firstDip}>
          {firstKettleAtMs === null ? head.noKettle : head.firstDip(firstKettleAtMs)}
        </Figure>
        {lastOutAtMs !== null && <Figure label={head.labels.lastOut}>{head.lastOut(lastOutAtMs)}</Figure>}
        <Figure label={head.labels.profit} note={head.profit}>
          {say.money(profitCents)}
        </Figure>
        <Figure label={head.labels.waves}>
          {wavesProfitCents === null ? head.moreUnknown : head.more(profitCents - wavesProfitCents)}
        </Figure>
        <Figure label={head.labels.risk} note={risks.slice(1).join(', ')}>
          {risks[0]}
        </Figure>
        {crewMinutes !== null && <Figure label={head.labels.crew}>{head.crew(crewMinutes)}</Figure>}
      </dl>
      <p>{tightestText(plan, say)}</p>
      {plan.cannot.length > 0 && (
        <ul class="plan-cannot">
          {plan.cannot.map((cannot) => (
            <li key={JSON.stringify(cannot)} class="desk-trouble">
              {say.cannot(cannot, loadOf)}
            </li>
          ))}
        </ul>
      )}
      <details>
        <summary>{head.howTitle}</summary>
        <p class="desk-quiet">{head.how(profitCents, wavesProfitCents)}</p>
      </details>
    </Panel>
  )
}

/** What more of would gain most, in a sentence. */
export function tightestText({ figures: { bottleneck } }: Plan, { head }: BakePlanWords): string {
  return bottleneck === null ? head.noBottleneck : head.bottleneck(bottleneck.of, bottleneck.gainCents)
}

interface FigureProps {
  readonly label: string
  readonly note?: string
  readonly children: string | undefined
}

function Figure({ label, note, children }: FigureProps) {
  return (
    <div>
      <dt>{label}</dt>
      <dd>
        {children}
        {note !== undefined && <span class="desk-quiet">{note}</span>}
      </dd>
    </div>
  )
}

/** Expected pieces are no counts: whole ones are enough. */
function round(pieces: number): number {
  return Math.round(pieces)
}
