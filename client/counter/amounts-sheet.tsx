import type { ComponentChildren } from 'preact'
import { useState } from 'preact/hooks'
import type { Act } from '../../shared-core/day/commands.ts'
import type { VarietyId } from '../../shared-core/ids.ts'
import { Key } from '../parts/key.tsx'
import { FAST_TAP_MS } from '../parts/press-guard.ts'
import { Rod } from '../parts/rod.tsx'
import { PIECES_PER_RING } from '../parts/rod-stack.ts'
import type { AmountsPurpose, CounterWords } from '../words/counter.ts'
import type { Chosen } from './amounts-view.ts'
import { actKeys, chosenLines, linesPage, nothingChosen, withChosen, withSingles } from './amounts-view.ts'
import type { BoardState } from './counter-board.tsx'
import type { CounterParts } from './counter-screen.tsx'
import type { Hand } from './hand.ts'
import { linesOf, piecesInHand } from './hand.ts'
import { PageKeys } from './page-keys.tsx'
import { RingPile, Singles } from './ring-pile.tsx'
import { rodFacts } from './rod-text.ts'

export interface AmountsProps extends CounterParts {
  readonly board: BoardState
  readonly purpose: AmountsPurpose
}

/** Half-dozens to touch at once; further ones are added by sixes. */
const RINGS_MOST = 7
const NOT_CHOSEN = '–'

/**
 * How many, as rings: a touch of a half-dozen sets just that number, one of the singles adds to it, so that any number is two
 * touches. It begins with nothing chosen: a number that stood there already would be taken for one that was meant. The
 * same for a sale of another number, for keeping, for what was not sold, and for a count.
 */
export function AmountsSheet({ store, words, sizes, board, purpose }: AmountsProps) {
  const [lines, setLines] = useState(() => nothingChosen(board.hand))
  const [active, setActive] = useState(lines[0]?.varietyId)
  const line = lines.find((one) => one.varietyId === active)
  const rod = board.rods.find((one) => one.varietyId === active)
  const { amounts } = words.counter
  const finish = (acts: readonly Act[]) => {
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
        <ActKeys lines={lines} purpose={purpose} words={words} onAct={finish} />
        <Back words={words} onPress={() => board.openSheet(null)} />
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

interface RingKeysProps {
  readonly pieces: number | null
  readonly words: CounterWords
  readonly pilePx: number
  readonly onChange: (pieces: number) => void
}

function RingKeys({ pieces, words, pilePx, onChange }: RingKeysProps) {
  const { amounts } = words.counter
  const rings = pieces === null ? null : Math.floor(pieces / PIECES_PER_RING)
  const singles = pieces === null ? null : pieces % PIECES_PER_RING
  return (
    <div class="counter-rings">
      <KeyRow title={amounts.wholeHalfDozens}>
        {Array.from({ length: RINGS_MOST + 1 }, (_, count) => (
          <Key
            key={`rings ${count * PIECES_PER_RING}`}
            name={amounts.ringsKey(count)}
            chosen={count === rings}
            onPress={() => onChange(count * PIECES_PER_RING)}
          >
            <span class="counter-ring-face">
              <RingPile pieces={count * PIECES_PER_RING} widthPx={pilePx} rings={RINGS_MOST} />
              <span>{count * PIECES_PER_RING}</span>
            </span>
          </Key>
        ))}
        <Key name={amounts.sixMore} sameTouchMs={FAST_TAP_MS} onPress={() => onChange((pieces ?? 0) + PIECES_PER_RING)}>
          <span class="counter-ring-face">+6</span>
        </Key>
      </KeyRow>
      <KeyRow title={amounts.singles}>
        {Array.from({ length: PIECES_PER_RING }, (_, count) => (
          <Key
            key={`singles ${count}`}
            name={amounts.singlesKey(count)}
            chosen={count === singles}
            onPress={() => onChange(withSingles(pieces, count))}
          >
            <span class="counter-ring-face">
              <Singles pieces={count} sizePx={pilePx * 0.5} />
              <span>+{count}</span>
            </span>
          </Key>
        ))}
        <output class="counter-total">{pieces ?? NOT_CHOSEN}</output>
      </KeyRow>
    </div>
  )
}

function KeyRow({ title, children }: { title: string; children: ComponentChildren }) {
  return (
    <div class="counter-ring-row" role="group" aria-label={title}>
      {children}
    </div>
  )
}

interface ActKeysProps {
  readonly lines: readonly Chosen[]
  readonly purpose: AmountsPurpose
  readonly words: CounterWords
  readonly onAct: (acts: readonly Act[]) => void
}

function ActKeys({ lines, purpose, words, onAct }: ActKeysProps) {
  const chosen = chosenLines(lines)
  const isChosen = purpose === 'count' ? chosen.length > 0 : piecesInHand(chosen) > 0
  const refusal = isChosen ? undefined : words.counter.amounts.nothingChosen
  return (
    <>
      {actKeys(purpose, chosen, words).map(({ label, acts }, index) => (
        <div key={label.replace(/ ?\d+/, '')} class="counter-wide" style={{ flexGrow: 1 }}>
          <Key
            label={label}
            detail={refusal === undefined ? detailOf(purpose === 'count' ? chosen : linesOf(chosen), words) : undefined}
            tone={refusal !== undefined ? undefined : index === 0 && purpose !== 'not-sold' ? 'act' : 'strong'}
            refusal={refusal}
            onPress={() => onAct(acts)}
          />
        </div>
      ))}
    </>
  )
}

/** Two varieties are named, more are counted: each has its key above. */
function detailOf(lines: Hand, words: CounterWords): string | undefined {
  if (lines.length < 2) return undefined
  return lines.length === 2 ? words.line.contents(lines) : words.counter.hand.kinds(lines.length)
}

export function Back({ words, onPress }: { words: CounterWords; onPress: () => void }) {
  return (
    <div class="counter-small-key counter-back">
      <Key onPress={onPress}>
        <span class="counter-word">{words.counter.back}</span>
      </Key>
    </div>
  )
}
