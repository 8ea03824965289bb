import type { State } from '../../shared-core/day/state.ts'
import type { DeskWords } from '../words/desk.ts'
import type { DeskPlace } from './place.ts'
import { addressOf, PLACES } from './place.ts'

interface NavProps {
  readonly place: DeskPlace
  readonly state: State
  readonly words: DeskWords
}

/** The desk's places; one with something that waits for an answer says how much. */
export function Nav({ place, state, words }: NavProps) {
  const counts: { readonly [place in DeskPlace]?: number } = { today: state.unsure.size }
  return (
    <nav class="desk-nav" aria-label={words.desk.placesName}>
      {PLACES.map((one) => (
        <a key={one} href={addressOf(one)} aria-current={one === place ? 'page' : undefined}>
          {words.desk.places[one]}
          {(counts[one] ?? 0) > 0 && (
            <span class="desk-count" title={words.desk.waitsFor(counts[one] ?? 0)}>
              {counts[one]}
            </span>
          )}
        </a>
      ))}
    </nav>
  )
}
