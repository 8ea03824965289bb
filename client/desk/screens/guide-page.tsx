import { inUse } from '../../../shared-core/shop/in-order.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'
import { linkFor } from '../../live/name-in-link.ts'
import type { DeskWords } from '../../words/desk.ts'
import type { GuideName, OpenWords } from '../../words/desk-open.ts'
import type { DeskParts } from '../desk-screen.tsx'
import { Panel } from '../panel.tsx'
import { addressOf } from '../place.ts'
import { useAddresses } from './use-addresses.ts'
import { AUTHORITY } from './use-guides.ts'

interface GuidePageProps extends DeskParts {
  readonly guide: GuideName
  readonly say: OpenWords
}

/** How a machine becomes a screen, or a pedal a key of it: in words that hold for any make. */
export function GuidePage({ shop, words, guide, say }: GuidePageProps) {
  return (
    <>
      <p class="desk-noprint">
        <a href={addressOf('screens')}>← {say.back}</a>
      </p>
      <h2 class="desk-guide-title">{say.guides[guide].title}</h2>
      {say[guide].map(
        ({ title, lines, isCaution = false, hasAddress = false, hasAuthority = false, hasStations = false }) => (
          <Panel key={title} part={isCaution ? 'caution' : 'guide'} title={title}>
            <ul class="desk-guide">
              {lines.map((line) => (
                <li key={line}>{line}</li>
              ))}
            </ul>
            {hasAddress && <Address words={words} say={say} />}
            {hasAuthority && (
              <p>
                <a href={AUTHORITY}>
                  <code class="desk-code-text">{`${window.location.origin}${AUTHORITY}`}</code>
                </a>
              </p>
            )}
            {hasStations && <Stations shop={shop} words={words} say={say} />}
          </Panel>
        ),
      )}
    </>
  )
}

function Address({ words, say }: { readonly words: DeskWords; readonly say: OpenWords }) {
  const base = useAddresses()[0]?.url ?? window.location.origin
  return (
    <p>
      {say.example} <code class="desk-code-text">{linkFor(base, 'wall', words.desk.screens.role.wall)}</code>
    </p>
  )
}

/** The first keys that no keyboard of a shop has. */
const FIRST_KEY = 13

function Stations({ shop, words, say }: { readonly shop: Shop; readonly words: DeskWords; readonly say: OpenWords }) {
  const { pedalColumns } = say
  return (
    <table>
      <thead>
        <tr>
          <th>{pedalColumns.key}</th>
          <th>{pedalColumns.station}</th>
          <th>{pedalColumns.acts}</th>
        </tr>
      </thead>
      <tbody>
        {inUse(shop.stations)
          .filter(({ acts }) => acts.length > 0)
          .map(({ id, name, acts }, place) => (
            <tr key={id}>
              <td>F{FIRST_KEY + place}</td>
              <td>{name}</td>
              <td>{acts.map(words.acts.verb).join(', ')}</td>
            </tr>
          ))}
      </tbody>
    </table>
  )
}
