import { useState } from 'preact/hooks'
import type { Act } from '../../shared-core/day/commands.ts'
import type { VarietyId } from '../../shared-core/ids.ts'
import { Key } from '../parts/key.tsx'
import { Rod } from '../parts/rod.tsx'
import type { AmountsPurpose, CounterWords } from '../words/counter.ts'
import type { Chosen } from './amounts-view.ts'
import { actKeys, chosenLines, linesPage, nothingChosen, withChosen } from './amounts-view.ts'
import type { Hand } from './hand.ts'
import { linesOf, piecesInHand } from './hand.ts'
import { kindsText, sellsHere } from './idle-view.ts'
import { PageKeys } from './page-keys.tsx'
import { NOT_CHOSEN, RingKeys } from './ring-keys.tsx'
import { rodFacts } from './rod-text.ts'
import type { SheetProps } from './sheets.tsx'
import { Back, Wide } from './small-key.tsx'

export interface AmountsProps extends SheetProps {
  readonly purpose: AmountsPurpose
}

/**
 * How many, as rings: a touch of a half-dozen sets just that number, one of the singles adds to it, so that any number is two
 * touches. It begins with nothing chosen: a number that stood there already would be taken for one that was meant. The
 * same for a sale of another number, for keeping, for what was not sold, and for a count.
 */
export function AmountsSheet(props: AmountsProps) {
  return props.purpose === 'unnamed' ? (
    <UnnamedAmount {...props} />
  ) : (
    <NamedAmounts {...props} purpose={props.purpose} />
  )
}

type NamedProps = SheetProps & { readonly purpose: Exclude<AmountsPurpose, 'unnamed'> }

function NamedAmounts({ store, state, words, sizes, board, purpose }: NamedProps) {
  const [lines, setLines] = useState(() => nothingChosen(board.hand))
  const [active, setActive] = useState(lines[0]?.varietyId)
  const line = lines.find((one) => one.varietyId === active)
  const rod = board.rods.find((one) => one.varietyId === active)
  const { amounts } = words.counter
  const finish = (acts: readonly Act[]) => {
    const [count] = acts
    if (purpose === 'count' && count !== undefined) {
      board.sendCount(
        count,
        lines.map((one) => one.varietyId),
      )
      return
    }
    for (const act of acts) store.send(act)
    board.setHand([])
    board.openSheet(null)
  }
  return (
    <section class="counter-sheet" role="dialog" aria-label={amounts.title[purpose]}>
      {lines.length > 1 ? (
        <LineKeys lines={lines} active={active} words={words} onChoose={setActive} />
      ) : (
        <div class="counter-sheet-head counter-alone">
          <h1>{amounts.title[purpose]}</h1>
          {rod !== undefined && line !== undefined && (
            <div class="counter-active">
              <Rod
                pieces={line.pieces ?? 0}
                onTheWay={0}
                maxRings={12}
                height={Math.round(sizes.keyPx * 1.25)}
                width={Math.round(sizes.keyPx * 0.6)}
              />
              <div>
                <h2>{rod.name}</h2>
                <p class="counter-quiet">{rodFacts(rod, board.time, words).join(', ')}</p>
              </div>
            </div>
          )}
        </div>
      )}
      {line !== undefined && (
        <RingKeys
          pieces={line.pieces}
          words={words}
          pilePx={Math.round(sizes.namePx * 1.5)}
          onChange={(pieces) => setLines(withChosen(lines, line.varietyId, pieces))}
        />
      )}
      <div class="counter-keys">
        <ActKeys lines={lines} purpose={purpose} sells={sellsHere(state)} words={words} onAct={finish} />
        <Back label={words.counter.back} onPress={() => board.openSheet(null)} />
      </div>
    </section>
  )
}

/** How many were sold of which nobody knows the kinds. */
function UnnamedAmount({ store, words, sizes, board }: SheetProps) {
  const [pieces, setPieces] = useState<number | null>(null)
  const { amounts, hand, back } = words.counter
  const isChosen = pieces !== null && pieces > 0
  return (
    <section class="counter-sheet" role="dialog" aria-label={amounts.title.unnamed}>
      <div class="counter-sheet-head counter-alone">
        <h1>{hand.unnamedHow}</h1>
      </div>
      <RingKeys pieces={pieces} words={words} pilePx={Math.round(sizes.namePx * 1.5)} onChange={setPieces} />
      <div class="counter-keys">
        <Wide share={1}>
          <Key
            label={amounts.sold(pieces)}
            detail={isChosen ? hand.unnamedDetail : undefined}
            tone={isChosen ? 'act' : 'plain'}
            refusal={isChosen ? undefined : amounts.nothingChosen}
            onPress={() => {
              if (pieces !== null) store.send({ type: 'sellUnnamed', pieces })
              board.setUnnamed(false)
              board.openSheet(null)
            }}
          />
        </Wide>
        <Back label={back} onPress={() => board.openSheet(null)} />
      </div>
    </section>
  )
}

interface LineKeysProps {
  readonly lines: readonly Chosen[]
  readonly active: VarietyId | undefined
  readonly words: CounterWords
  readonly onChoose: (varietyId: VarietyId) => void
}

/** Several rods: a key for each, in pages; the rings below are the chosen one's. */
function LineKeys({ lines, active, words, onChoose }: LineKeysProps) {
  const [wanted, setPage] = useState(0)
  const { items, page, pages } = linesPage(lines, wanted)
  return (
    <div class="counter-lines">
      {items.map(({ varietyId, pieces }) => (
        <Key
          key={varietyId}
          chosen={varietyId === active}
          name={pieces === null ? words.names.variety(varietyId) : words.line.contents([{ varietyId, pieces }])}
          onPress={() => onChoose(varietyId)}
        >
          <span class="counter-line">
            <span>{words.names.variety(varietyId)}</span>
            <strong>{pieces ?? NOT_CHOSEN}</strong>
          </span>
        </Key>
      ))}
      {pages > 1 && <PageKeys page={page} pages={pages} words={words} onPage={setPage} direction="across" />}
    </div>
  )
}

interface ActKeysProps {
  readonly lines: readonly Chosen[]
  readonly purpose: NamedProps['purpose']
  readonly sells: boolean
  readonly words: CounterWords
  readonly onAct: (acts: readonly Act[]) => void
}

function ActKeys({ lines, purpose, sells, words, onAct }: ActKeysProps) {
  const chosen = chosenLines(lines)
  const isChosen = purpose === 'count' ? chosen.length > 0 : piecesInHand(chosen) > 0
  const refusal = isChosen ? undefined : words.counter.amounts.nothingChosen
  const isOnlyOne = purpose !== 'other'
  return (
    <>
      {actKeys(purpose, chosen, words, sells).map(({ id, label, acts }) => (
        <Wide key={id} share={1}>
          <Key
            label={label}
            detail={
              refusal === undefined && isOnlyOne
                ? detailOf(purpose === 'count' ? chosen : linesOf(chosen), words)
                : undefined
            }
            tone={refusal !== undefined ? undefined : isOnlyOne || id === 'sold' ? 'act' : 'strong'}
            refusal={refusal}
            onPress={() => onAct(acts)}
          />
        </Wide>
      ))}
    </>
  )
}

/** Two varieties are named, more are counted: each has its key above. */
function detailOf(lines: Hand, words: CounterWords): string | undefined {
  if (lines.length < 2) return undefined
  return lines.length === 2 ? words.line.contents(lines) : kindsText(lines, words)
}
