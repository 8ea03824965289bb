import type { ComponentChildren } from 'preact'
import { Key } from '../parts/key.tsx'
import { FAST_TAP_MS } from '../parts/press-guard.ts'
import { PIECES_PER_RING } from '../parts/rod-stack.ts'
import type { CounterWords } from '../words/counter.ts'
import { withSingles } from './amounts-view.ts'
import { RingPile, Singles } from './ring-pile.tsx'

/** Half-dozens to touch at once; further ones are added by sixes. */
const RINGS_MOST = 7
export const NOT_CHOSEN = '–'

export interface RingKeysProps {
  readonly pieces: number | null
  readonly words: CounterWords
  readonly pilePx: number
  readonly onChange: (pieces: number) => void
}

/** Any number in two touches: a touch of a half-dozen sets just that number, one of the singles adds to it. */
export function RingKeys({ pieces, words, pilePx, onChange }: RingKeysProps) {
  const { amounts } = words.counter
  const rings = pieces === null ? null : Math.floor(pieces / PIECES_PER_RING)
  const singles = pieces === null ? null : pieces % PIECES_PER_RING
  return (
    <div class="counter-rings">
      <KeyRow title={amounts.wholeHalfDozens}>
        {Array.from({ length: RINGS_MOST + 1 }, (_, count) => (
          <Key
            key={`rings ${count * PIECES_PER_RING}`}
            name={amounts.ringsKey(count)}
            chosen={count === rings}
            onPress={() => onChange(count * PIECES_PER_RING)}
          >
            <span class="counter-ring-face">
              <RingPile pieces={count * PIECES_PER_RING} widthPx={pilePx} rings={RINGS_MOST} />
              <span>{count * PIECES_PER_RING}</span>
            </span>
          </Key>
        ))}
        <Key name={amounts.sixMore} sameTouchMs={FAST_TAP_MS} onPress={() => onChange((pieces ?? 0) + PIECES_PER_RING)}>
          <span class="counter-ring-face">+6</span>
        </Key>
      </KeyRow>
      <KeyRow title={amounts.singles}>
        {Array.from({ length: PIECES_PER_RING }, (_, count) => (
          <Key
            key={`singles ${count}`}
            name={amounts.singlesKey(count)}
            chosen={count === singles}
            onPress={() => onChange(withSingles(pieces, count))}
          >
            <span class="counter-ring-face">
              <Singles pieces={count} sizePx={pilePx * 0.5} />
              <span>+{count}</span>
            </span>
          </Key>
        ))}
        <output class="counter-total">{pieces ?? NOT_CHOSEN}</output>
      </KeyRow>
    </div>
  )
}

function KeyRow({ title, children }: { title: string; children: ComponentChildren }) {
  return (
    <div class="counter-ring-row" role="group" aria-label={title}>
      {children}
    </div>
  )
}
