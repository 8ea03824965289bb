import './screens.css'
import { useMemo } from 'preact/hooks'
import { openWords } from '../../words/desk-open.ts'
import { settingsWords } from '../../words/settings.ts'
import type { PlaceParts } from '../desk-screen.tsx'
import { DistancePanel } from '../distance-panel.tsx'
import { Panel } from '../panel.tsx'
import { addressOf } from '../place.ts'
import { ScreensPanel } from '../screens-panel.tsx'
import { GuidePage } from './guide-page.tsx'
import { OpenPanel } from './open-panel.tsx'
import { ThisScreen } from './this-screen.tsx'

const GUIDES = ['kiosk', 'pedals'] as const

/** Which screens there are, how another is opened, and how a machine becomes one. */
export function ScreensPlace(parts: PlaceParts) {
  const { live, words, within } = parts
  const say = useMemo(() => openWords(words), [words])
  const { titles } = words.desk
  const guide = GUIDES.find((one) => one === within)
  if (guide !== undefined) return <GuidePage {...parts} guide={guide} say={say} />
  return (
    <>
      <Panel part="screens" title={say.connected}>
        <ScreensPanel {...parts} />
      </Panel>
      <Panel part="open" title={say.title}>
        <OpenPanel words={words} say={say} />
        <h3>{say.guidesTitle}</h3>
        <ul class="desk-addresses">
          {GUIDES.map((one) => (
            <li key={one}>
              <a href={addressOf('screens', one)}>{say.guides[one].link}</a>
            </li>
          ))}
        </ul>
      </Panel>
      <Panel part="this" title={say.thisScreen}>
        <ThisScreen {...parts} />
      </Panel>
      <Panel part="distance" title={titles.distance}>
        <DistancePanel {...parts} />
      </Panel>
      <Panel part="cautions" title={titles.cautions}>
        <p>{words.cautions.aid}</p>
        <p class="desk-quiet">
          Boilboard, {settingsWords(words).version} {live.version}
        </p>
      </Panel>
    </>
  )
}
