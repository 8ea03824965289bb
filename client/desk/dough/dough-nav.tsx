import type { DeskWords } from '../../words/desk.ts'
import type { DoughWords } from '../../words/desk-dough.ts'
import { addressOf } from '../place.ts'
import type { DoughPage } from './pages.ts'
import { PAGES, withinOf } from './pages.ts'

interface NavProps {
  readonly page: DoughPage
  readonly date: string
  readonly words: DeskWords
  readonly say: DoughWords
}

/** The pages of the dough room; those of one day name it. */
export function DoughNav({ page, date, words, say }: NavProps) {
  const ofDay = (one: DoughPage) => one === 'day' || one === 'sheets'
  return (
    <nav class="desk-pages desk-noprint" aria-label={say.pagesName}>
      {PAGES.map((one) => (
        <a
          key={one}
          href={addressOf('dough', withinOf(one, ofDay(one) ? date : null))}
          aria-current={one === page ? 'page' : undefined}
        >
          {one === 'day' ? words.times.date(date) : say.pages[one]}
        </a>
      ))}
    </nav>
  )
}
