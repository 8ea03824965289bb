import type { ComponentChildren } from 'preact'
import { Key } from '../../parts/key.tsx'
import type { SheetParts } from '../sheet.tsx'

export interface PageRowProps extends Pick<SheetParts, 'words' | 'room'> {
  readonly page: number
  readonly pages: number
  readonly onTurn: (page: number) => void
  /** What stands in the same row, at its other end. */
  readonly foot?: ComponentChildren
}

/** Two arrow keys that turn the pages of a list, none where one page holds it all, and what else is under the list. */
export function PageRow(props: PageRowProps) {
  const { room, pages, foot } = props
  if (pages < 2 && foot === undefined) return null
  return (
    <div class="bench-shelf bench-page" style={{ height: `${room.rowPx}px` }}>
      {pages > 1 && <Arrows {...props} />}
      {foot !== undefined && <div class="bench-page-foot">{foot}</div>}
    </div>
  )
}

function Arrows({ words, page, pages, onTurn }: PageRowProps) {
  const { sheet } = words.bench
  return (
    <>
      <Key label="▲" name={sheet.earlier} refusal={page === 0 ? '' : undefined} onPress={() => onTurn(page - 1)} />
      <Key
        label="▼"
        name={sheet.further}
        refusal={page === pages - 1 ? '' : undefined}
        onPress={() => onTurn(page + 1)}
      />
      <span class="bench-quiet">{sheet.page(page + 1, pages)}</span>
    </>
  )
}
