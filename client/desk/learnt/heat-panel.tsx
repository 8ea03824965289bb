import type { OvenHeat } from '../../../shared-core/live/oven-heat.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'
import { shownDegrees, shownDifference } from '../../parts/shop-degrees.ts'
import type { DeskWords } from '../../words/desk.ts'
import type { LearntTimesWords } from '../../words/desk-learnt.ts'
import { Panel } from '../panel.tsx'
import { HeatPlot } from './heat-plot.tsx'

interface HeatPanelProps {
  readonly told: LearntTimesWords
  readonly words: DeskWords
  readonly shop: Shop
  readonly heat: OvenHeat
}

/** What readings say of the oven, in sentences, and drawn where there is a course. */
export function HeatPanel(props: HeatPanelProps) {
  const { told, shop, heat } = props
  const say = told.heat
  const sentences = sentencesOf(props)
  return (
    <Panel part="oven-heat" title={say.title} isWide>
      <p class="desk-quiet">{say.hint}</p>
      {shop.oven.bakeAt === null && shop.oven.secondAt === null ? (
        <p>{say.noTarget}</p>
      ) : (
        <p>{say.basis[heat.basis]}</p>
      )}
      {sentences.length > 0 && (
        <ul>
          {sentences.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      )}
      {heat.readings.length === 0 ? <p class="desk-quiet">{say.noReadings}</p> : <HeatPlot {...props} />}
      {heat.heldBack !== null && (
        <p class="desk-quiet">
          {say.heldBack(heat.heldBack, shownDifference(heat.heldBack.milliCelsius, shop.profile.temperature))}
        </p>
      )}
      <p class="desk-quiet">{say.caution}</p>
    </Panel>
  )
}

function sentencesOf({ told, shop, heat }: HeatPanelProps): readonly string[] {
  const say = told.heat
  const unit = shop.profile.temperature
  const { next, second, turnOn, course } = heat
  const said: string[] = []
  if (next !== null) {
    const now = shownDegrees(next.milliCelsius, unit)
    said.push(
      next.waitUntilMs === null ? say.hot(now) : say.wait(now, shownDegrees(next.wanted, unit), next.waitUntilMs),
    )
  }
  if (second !== null) {
    const degrees = shownDegrees(second.milliCelsius, unit)
    const { reached, wantedMs } = second
    said.push(
      reached === null
        ? say.never(degrees)
        : say.second(degrees, reached.earliestMs, reached.likelyMs, reached.latestMs, wantedMs),
    )
  }
  if (turnOn !== null) said.push(say.turnOn(turnOn.byMs, turnOn.likelyMs, turnOn.readyAtMs))
  if (course !== null)
    said.push(say.course(course.isHeating, course.tauMinutes, shownDegrees(course.limitMilliCelsius, unit)))
  return said
}
