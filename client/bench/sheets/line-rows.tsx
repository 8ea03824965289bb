import { useState } from 'preact/hooks'
import type { Line } from '../../../shared-core/day/state.ts'
import type { VarietyId } from '../../../shared-core/ids.ts'
import { Key } from '../../parts/key.tsx'
import { FAST_TAP_MS } from '../../parts/press-guard.ts'
import { pageOf } from '../pages.ts'
import type { SheetParts } from '../sheet.tsx'
import { GridKey } from '../sheet.tsx'
import { PageRow } from './page-row.tsx'
import { splitRoom } from './split.ts'

export interface LineRowsProps extends SheetParts {
  readonly lines: readonly Line[]
  readonly chosen: VarietyId | null
  readonly widthPx: number
  /** Rows of keys that there is room for. */
  readonly rows: number
  /** What stands under a line's name; its pieces when left out. */
  readonly detail?: ((line: Line) => string) | undefined
  readonly onChoose: (id: VarietyId) => void
  readonly onLess: (id: VarietyId) => void
  readonly onMore: (id: VarietyId) => void
}

/** The lines of a load: each with its name, a board less and a board more. */
export function LineRows(props: LineRowsProps) {
  const { lines, rows, words, room } = props
  const [wanted, setWanted] = useState(0)
  const { items, page, pages } = pageOf(lines, { places: Math.max(2, rows), arrows: 1 }, wanted)
  const { contents } = words.bench
  return (
    <>
      {lines.length === 0 && <div class="bench-quiet bench-nothing">{contents.nothingYet}</div>}
      {items.map((line) => (
        <Row key={line.varietyId} {...props} line={line} />
      ))}
      <PageRow words={words} room={room} page={page} pages={pages} onTurn={setWanted} />
    </>
  )
}

function Row({
  line,
  chosen,
  widthPx,
  words,
  sizes,
  room,
  detail,
  onChoose,
  onLess,
  onMore,
}: LineRowsProps & { readonly line: Line }) {
  const { varietyId, pieces } = line
  const name = words.names.variety(varietyId)
  const { sheet } = words.bench
  const { isNarrow } = splitRoom(room)
  const namePx = isNarrow ? widthPx : widthPx - 2 * (room.keyPx + room.gapPx)
  const item = {
    id: varietyId,
    label: name,
    details: [detail === undefined ? String(pieces) : detail(line)],
    chosen: chosen === varietyId,
    onPress: () => onChoose(varietyId),
  }
  return (
    <div class={isNarrow ? 'bench-shelf bench-line-row-narrow' : 'bench-shelf'} data-line={varietyId}>
      <GridKey item={item} widthPx={namePx} heightPx={room.rowPx} sizes={sizes} />
      <div class="bench-step" style={{ width: `${room.keyPx}px` }}>
        <Key label="−" name={sheet.less(name, 1)} sameTouchMs={FAST_TAP_MS} onPress={() => onLess(varietyId)} />
      </div>
      <div class="bench-step" style={{ width: `${room.keyPx}px` }}>
        <Key label="+" name={sheet.plus(name, 1)} sameTouchMs={FAST_TAP_MS} onPress={() => onMore(varietyId)} />
      </div>
    </div>
  )
}
