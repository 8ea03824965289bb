import type { CloseNow } from '../../../shared-core/day/close.ts'
import type { VarietyId } from '../../../shared-core/ids.ts'
import { piecesOf } from '../../../shared-core/line/lines.ts'
import type { LastWords } from '../../words/desk-close.ts'
import type { Names } from '../../words/names.ts'

interface WarningWords {
  readonly say: LastWords
  readonly names: Names
}

/** What a person might still want to do before the close, in words; nothing of it holds the close up. */
export function closeWarnings(
  { onTheLine, standing, kept, openSteps }: Pick<CloseNow, 'onTheLine' | 'standing' | 'kept' | 'openSteps'>,
  toCount: readonly VarietyId[],
  { say, names }: WarningWords,
): readonly string[] {
  const keptPieces = kept.reduce((sum, { lines }) => sum + piecesOf(lines), 0)
  const texts = [
    piecesOf(onTheLine) > 0 ? say.onTheLine(piecesOf(onTheLine)) : null,
    toCount.length > 0 ? say.uncounted(toCount.map(names.variety)) : null,
    openSteps.length > 0 ? say.openSteps(openSteps.length) : null,
    keptPieces > 0 ? say.kept(keptPieces) : null,
    piecesOf(standing) > 0 ? say.standing(piecesOf(standing)) : null,
  ]
  return texts.filter((text) => text !== null)
}
