import { Key } from '../../parts/key.tsx'
import type { SheetParts } from '../sheet.tsx'

export interface PageRowProps extends Pick<SheetParts, 'words' | 'room'> {
  readonly page: number
  readonly pages: number
  readonly onTurn: (page: number) => void
}

/** Two arrow keys that turn the pages of a list; nothing where one page holds it all. */
export function PageRow({ words, room, page, pages, onTurn }: PageRowProps) {
  const { sheet } = words.bench
  if (pages < 2) return null
  return (
    <div class="bench-shelf bench-page" style={{ height: `${room.rowPx}px` }}>
      <Key label="▲" name={sheet.earlier} refusal={page === 0 ? '' : undefined} onPress={() => onTurn(page - 1)} />
      <Key
        label="▼"
        name={sheet.further}
        refusal={page === pages - 1 ? '' : undefined}
        onPress={() => onTurn(page + 1)}
      />
      <span class="bench-quiet">{sheet.page(page + 1, pages)}</span>
    </div>
  )
}
