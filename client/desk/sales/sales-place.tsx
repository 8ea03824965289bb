import './sales.css'
import { useMemo } from 'preact/hooks'
import type { SalesWords } from '../../words/desk-sales.ts'
import { salesWords } from '../../words/desk-sales.ts'
import type { DeskParts, PlaceParts } from '../desk-screen.tsx'
import { addressOf } from '../place.ts'
import { FilePage } from './file-page.tsx'
import { FilesPage } from './files-page.tsx'
import { NamesPage } from './names-page.tsx'
import type { SalesPage } from './pages.ts'
import { pageOf, withinOf } from './pages.ts'

export interface SalesParts extends DeskParts {
  readonly say: SalesWords
}

/** Past sales from a till's files, and what its names mean. */
export function SalesPlace({ within, ...parts }: PlaceParts) {
  const say = useMemo(() => salesWords(parts.words), [parts.words])
  const page = pageOf(within)
  const of = { ...parts, say }
  return (
    <>
      <nav class="sales-nav" aria-label={say.pagesName}>
        <PageLink page={{ kind: 'files' }} isHere={page.kind !== 'names'} text={say.pages.files} />
        <PageLink page={{ kind: 'names' }} isHere={page.kind === 'names'} text={say.pages.names} />
      </nav>
      {page.kind === 'files' && <FilesPage {...of} />}
      {page.kind === 'file' && <FilePage key={page.id} {...of} id={page.id} />}
      {page.kind === 'names' && <NamesPage {...of} />}
    </>
  )
}

function PageLink({
  page,
  isHere,
  text,
}: {
  readonly page: SalesPage
  readonly isHere: boolean
  readonly text: string
}) {
  return (
    <a href={addressOf('salesIn', withinOf(page))} aria-current={isHere ? 'page' : undefined}>
      {text}
    </a>
  )
}
