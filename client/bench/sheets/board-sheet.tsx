import type { Act } from '../../../shared-core/day/commands.ts'
import type { Line, State } from '../../../shared-core/day/state.ts'
import type { VarietyId } from '../../../shared-core/ids.ts'
import { byVariety } from '../../../shared-core/line/contents.ts'
import { piecesOf } from '../../../shared-core/line/lines.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'
import type { SheetParts } from '../sheet.tsx'
import { Sheet } from '../sheet.tsx'
import { EditLines } from './edit-lines.tsx'

export interface BoardSheetProps extends SheetParts {
  readonly state: State
  readonly shop: Shop
  /** What the key was showing. */
  readonly lines: readonly Line[]
  readonly send: (act: Act) => void
}

/** What the plain pieces on the boards become. */
export function BoardSheet(props: BoardSheetProps) {
  const { state, shop, lines, words, send, onClose } = props
  const plain = [...state.batches.values()].filter((batch) => batch.stage === 'boards' && batch.varietyId === null)
  return (
    <Sheet {...props} title={words.bench.pieces.board} detail={words.line.pieces(piecesOf(plain))}>
      <EditLines
        {...props}
        startLines={lines}
        mostPieces={plain.length === 0 ? null : piecesOf(plain)}
        offered={toppedOnTheLine(shop, new Set(plain.map((batch) => batch.doughId)))}
        takeLabel={words.acts.name({ act: 'board' })}
        onTake={(taken) => {
          send({ type: 'board', lines: taken })
          onClose()
        }}
      />
    </Sheet>
  )
}

/** Varieties that are decided on the line, those of the doughs on the boards first. */
function toppedOnTheLine(shop: Shop, doughs: ReadonlySet<string>): readonly VarietyId[] {
  const rank = (id: VarietyId) => (doughs.has(shop.varieties.get(id)?.doughId ?? '') ? 0 : 1)
  return [...shop.varieties.values()]
    .filter((variety) => !variety.retired && variety.decidedAt === 'line')
    .map((variety) => variety.id)
    .sort((one, other) => rank(one) - rank(other) || byVariety(shop, one, other))
}
