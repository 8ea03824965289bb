import type { ComponentChildren } from 'preact'
import { useState } from 'preact/hooks'
import type { Line } from '../../../shared-core/day/state.ts'
import type { VarietyId } from '../../../shared-core/ids.ts'
import { boardsNeeded } from '../../../shared-core/line/boards.ts'
import { piecesOf } from '../../../shared-core/line/lines.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'
import type { Draft } from '../draft.ts'
import { addBoard, chooseLine, draftOf, takeBoard, touchVariety } from '../draft.ts'
import type { SheetParts } from '../sheet.tsx'
import { GridKey, KeyGrid } from '../sheet.tsx'
import { LineRows } from './line-rows.tsx'
import { splitRoom } from './split.ts'

export interface EditLinesProps extends SheetParts {
  readonly shop: Shop
  readonly startLines: readonly Line[]
  /** Pieces that fit; null where nothing limits. */
  readonly mostPieces: number | null
  /** Likeliest first. */
  readonly offered: readonly VarietyId[]
  /** The key that takes the lines, and why it cannot be touched yet. */
  readonly takeLabel: string
  readonly refusalOf?: ((lines: readonly Line[]) => string | undefined) | undefined
  readonly onTake: (lines: readonly Line[]) => void
  /** Instead of the varieties; given a way to put other lines in place of these. */
  readonly instead?: ((replace: (lines: readonly Line[]) => void, widthPx: number) => ComponentChildren) | undefined
}

/** Lines at the left with the key that takes them, varieties at the right: a board or a whole line in one touch. */
export function EditLines(props: EditLinesProps) {
  const { shop, startLines, mostPieces, words, room, offered, instead } = props
  const [draft, setDraft] = useState<Draft>(() => draftOf(startLines))
  const rules = { shop, mostPieces }
  const split = splitRoom(room)
  const { contents } = words.bench
  const varieties = offered.map((id) => ({
    id,
    label: words.names.variety(id),
    // What a touch does, in signs: a board more, or instead of the chosen line.
    details: [draft.chosen === null ? `+${shop.boards.pieces}` : '→'],
    onPress: () => setDraft(touchVariety(draft, id, rules)),
  }))
  return (
    <>
      <div class="bench-column" style={{ width: `${split.leftPx}px` }}>
        <LineRows
          {...props}
          widthPx={split.leftPx}
          rows={room.rows - 1}
          lines={draft.lines}
          chosen={draft.chosen}
          onChoose={(id) => setDraft(chooseLine(draft, id))}
          onLess={(id) => setDraft(takeBoard(draft, id, rules))}
          onMore={(id) => setDraft(addBoard(draft, id, rules))}
        />
        {draft.lines.length < room.rows - 1 && (
          <div class="bench-hint">
            {draft.chosen === null ? contents.touchToAdd : contents.becomes(words.names.variety(draft.chosen))}
          </div>
        )}
        <TakeKey {...props} lines={draft.lines} widthPx={split.leftPx} />
      </div>
      {instead === undefined ? (
        <KeyGrid {...props} columns={split.columns} rows={room.rows} widthPx={split.rightPx} items={varieties} />
      ) : (
        instead((lines) => setDraft(draftOf(lines)), split.rightPx)
      )}
    </>
  )
}

type TakeKeyProps = EditLinesProps & { readonly lines: readonly Line[]; readonly widthPx: number }

function TakeKey(props: TakeKeyProps) {
  const { shop, mostPieces, words, sizes, room, lines, widthPx, takeLabel, refusalOf, onTake } = props
  const { contents, shelf } = words.bench
  const item = {
    id: 'take',
    label: takeLabel,
    details: [contents.sum(piecesOf(lines), mostPieces, boardsNeeded(shop, lines))],
    tone: 'act',
    refusal: lines.length === 0 ? shelf.chooseWhat : refusalOf?.(lines),
    onPress: () => onTake(lines),
  } as const
  return <GridKey item={item} widthPx={widthPx} heightPx={room.rowPx} sizes={sizes} />
}
