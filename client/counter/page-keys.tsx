import { Key } from '../parts/key.tsx'
import { FAST_TAP_MS } from '../parts/press-guard.ts'
import type { CounterWords } from '../words/counter.ts'

export interface PageKeysProps {
  readonly page: number
  readonly pages: number
  readonly words: CounterWords
  readonly onPage: (page: number) => void
  /** How the pages lie: below each other, or side by side. */
  readonly direction: 'down' | 'across'
}

/** Arrow keys from page to page: nothing has to be dragged. */
export function PageKeys({ page, pages, words, onPage, direction }: PageKeysProps) {
  const { more, page: pageText } = words.counter
  const [back, on] = direction === 'down' ? ['↑', '↓'] : ['←', '→']
  return (
    <nav class={`counter-pages counter-pages-${direction}`}>
      <Turn sign={back} text={more} isEnd={page === 0} onPress={() => onPage(page - 1)} />
      <span class="counter-page-number">{pageText(page + 1, pages)}</span>
      <Turn sign={on} text={more} isEnd={page >= pages - 1} onPress={() => onPage(page + 1)} />
    </nav>
  )
}

interface TurnProps {
  readonly sign: string
  readonly text: string
  readonly isEnd: boolean
  readonly onPress: () => void
}

function Turn({ sign, text, isEnd, onPress }: TurnProps) {
  return (
    <Key name={`${text} ${sign}`} sameTouchMs={FAST_TAP_MS} refusal={isEnd ? '' : undefined} onPress={onPress}>
      <span class={isEnd ? 'counter-arrow counter-arrow-end' : 'counter-arrow'} aria-hidden="true">
        {sign}
      </span>
      <span class="counter-quiet">{text}</span>
    </Key>
  )
}
