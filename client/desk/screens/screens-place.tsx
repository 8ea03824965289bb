import './screens.css'
import './door.css'
import { useMemo } from 'preact/hooks'
import type { SafeCopies, Standing } from '../../../shared-core/live/devices.ts'
import { deskDoorWords } from '../../words/desk-door.ts'
import { openWords } from '../../words/desk-open.ts'
import { settingsWords, versionText } from '../../words/settings.ts'
import type { PlaceParts } from '../desk-screen.tsx'
import { DistancePanel } from '../distance-panel.tsx'
import { Panel } from '../panel.tsx'
import { addressOf } from '../place.ts'
import type { Refused } from '../refused-mark.ts'
import { ScreensPanel } from '../screens-panel.tsx'
import { useGot } from '../use-got.ts'
import { ClosedShop } from './closed-shop.tsx'
import { CopiesPanel } from './copies-panel.tsx'
import { GuidePage } from './guide-page.tsx'
import { OpenPanel } from './open-panel.tsx'
import { RefusedPanel } from './refused-panel.tsx'
import { ThisScreen } from './this-screen.tsx'
import { GUIDES, useGuides } from './use-guides.ts'

const LOOK_EVERY_MS = 10_000

/** Which screens there are, how another comes in, who tried, and how a machine becomes one. */
export function ScreensPlace(parts: PlaceParts) {
  const { live, words, within } = parts
  const say = useMemo(() => openWords(words), [words])
  const { titles } = words.desk
  const guides = useGuides()
  const guide = GUIDES.find((one) => one === within)
  if (guide !== undefined) return <GuidePage {...parts} guide={guide} say={say} />
  return (
    <>
      <WhoMayCome {...parts} />
      <SafeAndRefused {...parts} />
      <Panel part="guides" title={say.guidesTitle}>
        <ul class="desk-addresses">
          {guides.map((one) => (
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
        <p class="desk-quiet">Boilboard, {versionText(settingsWords(words), live)}</p>
      </Panel>
    </>
  )
}

/** In an open shop everybody opens a screen; in a closed one the desk lets devices in. */
function WhoMayCome(parts: PlaceParts) {
  const { words } = parts
  const open = useMemo(() => openWords(words), [words])
  const say = useMemo(() => deskDoorWords(words), [words])
  const standing = useGot<Standing>('/api/v1/me')
  if (standing.kind === 'got' && standing.value.kind === 'joined')
    return <ClosedShop {...parts} say={say} open={open} ownId={standing.value.device.id} />
  return (
    <>
      <Panel part="screens" title={open.connected}>
        <ScreensPanel {...parts} />
      </Panel>
      {standing.kind === 'got' && standing.value.kind === 'open' && (
        <Panel part="open" title={open.title}>
          <OpenPanel words={words} say={open} />
          <div class="door-warning">
            <p>{say.open}</p>
            {parts.live.demo === null && (
              <>
                <p>{say.closeIt}</p>
                <code class="desk-code-text">npm start -- --shop FOLDER</code>
              </>
            )}
          </div>
        </Panel>
      )}
    </>
  )
}

function SafeAndRefused(parts: PlaceParts) {
  const say = useMemo(() => deskDoorWords(parts.words), [parts.words])
  const beat = Math.floor(parts.live.nowMs / LOOK_EVERY_MS)
  const copies = useGot<SafeCopies>('/api/v1/copies', beat)
  const refused = useGot<Refused>('/api/v1/refused', beat)
  return (
    <>
      {copies.kind === 'got' && (
        <Panel part="copies" title={say.copies.title}>
          <CopiesPanel {...parts} say={say} copies={copies.value} />
        </Panel>
      )}
      {refused.kind === 'got' && (
        <Panel part="refused" title={say.refused.title}>
          <RefusedPanel {...parts} say={say} refused={refused.value} />
        </Panel>
      )}
    </>
  )
}
