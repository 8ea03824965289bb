import { useState } from 'preact/hooks'
import type { VarietyId } from '../../../shared-core/ids.ts'
import type { Rod } from '../../../shared-core/stock/left.ts'
import { rods } from '../../../shared-core/stock/left.ts'
import { PiecesField } from '../pieces-field.tsx'
import type { ClosingParts } from './closing.tsx'

/** More of one variety than any rack holds. */
const PIECES_MAX = 5_000

/** The rods in doubt, each with what the board thinks and a field for what is there. */
export function CountStep(parts: ClosingParts & { readonly toCount: readonly VarietyId[] }) {
  const { live, state, toCount, say } = parts
  const rodsNow = rods(state, live.nowMs)
  const inDoubt = toCount.flatMap((id) => rodsNow.find(({ varietyId }) => varietyId === id) ?? [])
  if (inDoubt.length === 0) return <p class="desk-even">{`✓ ${say.count.allKnown}`}</p>
  return (
    <>
      <p class="desk-quiet">{say.count.hint}</p>
      <ul class="desk-counts">
        {inDoubt.map((rod) => (
          <CountRow key={rod.varietyId} {...parts} rod={rod} />
        ))}
      </ul>
    </>
  )
}

function CountRow({ store, words, say, rod }: ClosingParts & { readonly rod: Rod }) {
  const { varietyId, name, likely, cooling, known } = rod
  const [pieces, setPieces] = useState<number | null>(null)
  const { rods: rodWords } = words.desk.today
  const count = (counted: number) => store.send({ type: 'count', varietyId, pieces: counted })
  const basis = known.how === 'nothing' ? '' : `, ${rodWords.known[known.how]} ${words.times.clock(known.atMs)}`
  return (
    <li>
      <span class="desk-count-name">
        <strong>{name}</strong>{' '}
        <span class="desk-quiet">{`${say.count.thinks(Math.max(0, likely) + cooling)}${basis}`}</span>
      </span>
      <PiecesField
        label={say.count.field(name)}
        value={pieces}
        most={PIECES_MAX}
        lessName={(step) => say.pieces.less(name, step)}
        moreName={(step) => say.pieces.more(name, step)}
        onChange={setPieces}
      />
      <button
        type="button"
        class="desk-strong"
        aria-label={pieces === null ? `${name}: ${say.count.say}` : `${name}: ${say.count.counted(pieces)}`}
        disabled={pieces === null}
        onClick={() => pieces !== null && count(pieces)}
      >
        {pieces === null ? say.count.say : say.count.counted(pieces)}
      </button>
      <button type="button" aria-label={`${name}: ${say.count.noneLeft}`} onClick={() => count(0)}>
        {say.count.noneLeft}
      </button>
    </li>
  )
}
