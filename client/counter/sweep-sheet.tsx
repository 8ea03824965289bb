import { useState } from 'preact/hooks'
import type { Act } from '../../shared-core/day/commands.ts'
import type { VarietyId } from '../../shared-core/ids.ts'
import { Key } from '../parts/key.tsx'
import { Rod } from '../parts/rod.tsx'
import { PIECES_PER_RING } from '../parts/rod-stack.ts'
import type { CounterRod } from './counter-rods.ts'
import { RingKeys } from './ring-keys.tsx'
import { RingPile } from './ring-pile.tsx'
import { numberFact } from './rod-text.ts'
import type { SheetProps } from './sheets.tsx'
import { Back, SmallKey, Wide } from './small-key.tsx'
import type { Looked, SweepRod } from './sweep-view.ts'
import {
  countsOf,
  halvesAround,
  halvesCounted,
  lookedText,
  nextToLook,
  pageAround,
  startSweep,
  sweepAct,
  withLooked,
} from './sweep-view.ts'

export interface SweepProps extends SheetProps {
  /** Read once, when the sheet opens: rods do not change under a counting finger. */
  readonly varietyIds: readonly VarietyId[]
  readonly onDone: (act: Act, varietyIds: readonly VarietyId[]) => void
  /** Counted to the piece unless somebody chooses otherwise. */
  readonly isExact?: boolean | undefined
  /** Where "later" leads; the rack when left out. */
  readonly onLater?: (() => void) | undefined
}

/**
 * Rod by rod, one touch each: the number of half-dozens that one sees. The next rod comes by itself, and the last touch
 * sends them all.
 */
export function SweepSheet(props: SweepProps) {
  const { words, board, onDone } = props
  const [rods, setRods] = useState(() => startSweep(props.varietyIds))
  const [active, setActive] = useState<VarietyId | null>(rods[0]?.varietyId ?? null)
  const { sweep } = words.jobs
  const rod = board.rods.find((one) => one.varietyId === active)
  const look = (looked: Looked) => {
    if (active === null) return
    const next = withLooked(rods, active, looked)
    setRods(next)
    setActive(nextToLook(next, active))
  }
  const counts = countsOf(rods)
  return (
    <section class="counter-sheet counter-sweep" role="dialog" aria-label={sweep.title}>
      <RodKeys rods={rods} active={active} words={words} onChoose={setActive} />
      {rod === undefined ? (
        <p class="counter-alone counter-through">{rods.length === 0 ? sweep.nothingCounted : sweep.allCounted}</p>
      ) : (
        <LookAt
          key={rod.varietyId}
          words={words}
          sizes={props.sizes}
          rod={rod}
          rods={rods}
          startsExact={props.isExact === true}
          onLook={look}
        />
      )}
      <div class="counter-keys">
        <Wide share={1}>
          <Key
            label={sweep.done(counts.length)}
            tone={rod === undefined && counts.length > 0 ? 'act' : 'strong'}
            refusal={counts.length === 0 ? sweep.nothingCounted : undefined}
            onPress={() =>
              onDone(
                sweepAct(rods),
                counts.map((count) => count.varietyId),
              )
            }
          />
        </Wide>
        {rod !== undefined && <SmallKey label={sweep.skip} onPress={() => look('skipped')} />}
        <Back label={sweep.later} onPress={props.onLater ?? (() => board.openSheet(null))} />
      </div>
    </section>
  )
}

interface RodKeysProps extends Pick<SheetProps, 'words'> {
  readonly rods: readonly SweepRod[]
  readonly active: VarietyId | null
  readonly onChoose: (varietyId: VarietyId) => void
}

/** The rods of the sweep with what was seen so far; a touch goes back to one. */
function RodKeys({ rods, active, words, onChoose }: RodKeysProps) {
  return (
    <div class="counter-swept">
      {pageAround(rods, active).map(({ varietyId, looked }) => (
        <Key
          key={varietyId}
          chosen={varietyId === active}
          name={`${words.names.variety(varietyId)}: ${lookedText(looked, words)}`}
          onPress={() => onChoose(varietyId)}
        >
          <span class="counter-swept-face">
            <span class="counter-swept-name">{words.names.variety(varietyId)}</span>
            <strong>{lookedText(looked, words)}</strong>
          </span>
        </Key>
      ))}
    </div>
  )
}

interface LookProps extends Pick<SheetProps, 'words' | 'sizes'> {
  readonly startsExact: boolean
  readonly rod: CounterRod
  readonly rods: readonly SweepRod[]
  readonly onLook: (looked: Looked) => void
}

function LookAt({ words, sizes, rod, rods, onLook, startsExact }: LookProps) {
  const [isExact, setExact] = useState(startsExact)
  const [pieces, setPieces] = useState<number | null>(null)
  const { sweep } = words.jobs
  const { rod: said } = words.counter
  const place = rods.findIndex((one) => one.varietyId === rod.varietyId) + 1
  const pilePx = Math.round(sizes.namePx * (sizes.isPhone ? 2 : 2.4))
  return (
    <>
      <div class="counter-alone counter-active">
        <Rod
          pieces={rod.likely}
          kept={rod.kept}
          onTheWay={0}
          maxRings={10}
          height={Math.round(sizes.keyPx * 1.1)}
          width={Math.round(sizes.keyPx * 0.6)}
        />
        <div>
          <h1>{rod.name}</h1>
          <p class="counter-quiet">
            {sweep.place(place, rods.length)} · {sweep.thought(numberFact(rod, said.known(rod.basis), said))}
            {rod.kept > 0 && ` · ${said.kept(rod.kept)}`}
          </p>
        </div>
        {isExact && <SmallKey label={sweep.inHalves} onPress={() => setExact(false)} />}
      </div>
      {isExact ? (
        <div class="counter-exact">
          <RingKeys pieces={pieces} words={words} pilePx={Math.round(sizes.namePx * 1.5)} onChange={setPieces} />
          <div class="counter-keys">
            <Wide share={1}>
              <Key
                label={sweep.next}
                detail={pieces === null ? undefined : words.counter.amounts.counted(pieces)}
                tone={pieces === null ? 'plain' : 'act'}
                refusal={pieces === null ? words.counter.amounts.nothingChosen : undefined}
                onPress={() => pieces !== null && onLook({ pieces, within: 0 })}
              />
            </Wide>
          </div>
        </div>
      ) : (
        <div class="counter-halves" role="group" aria-label={rod.name}>
          <HalfKey halves={0} text={sweep.none} name={sweep.none} pilePx={pilePx} onLook={onLook} />
          {halvesAround(rod.likely).map((halves) => (
            <HalfKey
              key={halves}
              halves={halves}
              text={sweep.dozens(halves)}
              name={sweep.spokenDozens(halves * PIECES_PER_RING, halves)}
              pilePx={pilePx}
              onLook={onLook}
            />
          ))}
          <Key onPress={() => setExact(true)}>
            <span class="counter-word">{sweep.exact}</span>
          </Key>
        </div>
      )}
    </>
  )
}

interface HalfKeyProps {
  readonly halves: number
  readonly text: string
  readonly name: string
  readonly pilePx: number
  readonly onLook: (looked: Looked) => void
}

/** Higher piles say no more than their number does. */
const PILE_RINGS_MOST = 8

function HalfKey({ halves, text, name, pilePx, onLook }: HalfKeyProps) {
  return (
    <Key name={name} onPress={() => onLook(halvesCounted(halves))}>
      <span class="counter-half">
        <RingPile pieces={halves * PIECES_PER_RING} widthPx={pilePx} rings={PILE_RINGS_MOST} />
        <span class="counter-half-text">
          <strong>{halves * PIECES_PER_RING}</strong>
          <span>{text}</span>
        </span>
      </span>
    </Key>
  )
}
