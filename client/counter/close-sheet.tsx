import { useState } from 'preact/hooks'
import type { VarietyId } from '../../shared-core/ids.ts'
import { toCountAtClose } from '../../shared-core/stock/close.ts'
import { Key } from '../parts/key.tsx'
import { FAST_TAP_MS } from '../parts/press-guard.ts'
import { Stepper } from '../parts/stepper.tsx'
import type { CounterWords } from '../words/counter.ts'
import type { Found } from './after-count.ts'
import { foundText } from './after-count.ts'
import type { Fates, LeftRod } from './close-view.ts'
import { allTo, closeActs, fateSums, leftRods, nextFate, piecesLeft } from './close-view.ts'
import { PageKeys } from './page-keys.tsx'
import { RingPile } from './ring-pile.tsx'
import { rowsPage } from './rows-page.ts'
import type { SheetProps } from './sheets.tsx'
import { Back, SmallKey, Wide } from './small-key.tsx'
import { SweepSheet } from './sweep-sheet.tsx'

/** A day's work of all people together cannot be more in a small shop. */
const CREW_HOURS_MAX = 99
const CREW_STEPS = [1, 8]

/** The close at the counter: count what is not known, say what becomes of what is left, and close. The desk has the rest. */
export function CloseSheet(props: SheetProps) {
  const { state, words, board } = props
  const [isCounting, setCounting] = useState(false)
  const [found, setFound] = useState<Found | null>(null)
  const [counted, setCounted] = useState<readonly VarietyId[]>([])
  // Counted by half-dozens is not to the piece, but somebody has looked.
  const toCount = toCountAtClose(state, board.time.nowMs).filter((id) => !counted.includes(id))
  if (isCounting) {
    return (
      <SweepSheet
        {...props}
        varietyIds={toCount}
        isExact
        onDone={(act, varietyIds) => {
          setFound(board.count(act, varietyIds))
          setCounted([...counted, ...varietyIds])
          setCounting(false)
        }}
        onLater={() => setCounting(false)}
      />
    )
  }
  return (
    <CloseForm
      {...props}
      toCount={toCount.length}
      foundText={found === null ? '' : foundText(found, words)}
      onCount={() => setCounting(true)}
    />
  )
}

interface FormProps extends SheetProps {
  readonly toCount: number
  readonly foundText: string
  readonly onCount: () => void
}

function CloseForm({ store, state, words, sizes, board, toCount, foundText: found, onCount }: FormProps) {
  const [fates, setFates] = useState<Fates>(new Map())
  const [hours, setHours] = useState(0)
  const { close } = words.jobs
  const left = leftRods(board.rods, fates)
  const label = state.day?.label ?? ''
  const finish = () => {
    for (const act of closeActs(left, label, hours)) store.send(act)
    board.openSheet(null)
  }
  return (
    <section class="counter-sheet" role="dialog" aria-label={close.title}>
      <div class="counter-sheet-head">
        <h1>{close.of(label)}</h1>
        <p>{[found, close.touchToChange].filter((text) => text !== '').join(' · ')}</p>
      </div>
      <LeftRack left={left} words={words} sizes={sizes} onFates={setFates} fates={fates} />
      <div class="counter-keys counter-fates">
        {(['dayOld', 'given', 'wasted'] as const).map((fate) => (
          <SmallKey key={fate} label={close.all[fate]} onPress={() => setFates(allTo(left, fate))} />
        ))}
        <div class="counter-crew">
          <span class="counter-quiet" aria-hidden="true">
            {close.crew}
          </span>
          <Stepper
            name={close.crew}
            value={hours}
            min={0}
            max={CREW_HOURS_MAX}
            steps={sizes.isPhone ? [1] : CREW_STEPS}
            detail={hours === 0 ? close.crewUnsaid : close.hours(hours)}
            lessName={close.lessHours}
            moreName={close.moreHours}
            limitWords={{ least: close.least, most: close.most }}
            onChange={setHours}
          />
        </div>
      </div>
      <div class="counter-keys">
        {toCount > 0 && (
          <Wide share={3}>
            <Key label={close.count(toCount)} tone="act" onPress={onCount} />
          </Wide>
        )}
        <Wide share={3}>
          <Key
            label={close.close}
            detail={left.length === 0 ? close.nothingLeft : close.summary(fateSums(left))}
            tone={toCount > 0 ? 'strong' : 'act'}
            onPress={finish}
          />
        </Wide>
        <Back label={words.counter.back} onPress={() => board.openSheet(null)} />
      </div>
    </section>
  )
}

interface LeftRackProps extends Pick<SheetProps, 'sizes'> {
  readonly left: readonly LeftRod[]
  readonly words: CounterWords
  readonly fates: Fates
  readonly onFates: (fates: Fates) => void
}

/** Two rows of six, three of three; where there are more, the arrows take the last places or a row of their own. */
const TABLET_MOST = 12
const TABLET_BESIDE_ARROWS = 10
const PHONE_MOST = 9

/** What is left, rod by rod; each touch takes one on to its next fate. */
function LeftRack({ left, words, sizes, fates, onFates }: LeftRackProps) {
  const [wanted, setPage] = useState(0)
  const { close } = words.jobs
  const most = sizes.isPhone ? PHONE_MOST : left.length > TABLET_MOST ? TABLET_BESIDE_ARROWS : TABLET_MOST
  const { items, page, pages } = rowsPage(left, most, wanted)
  return (
    <div class="counter-alone counter-left">
      {left.length === 0 && <p>{close.nothingLeft}</p>}
      {items.map((rod) => (
        <Key
          key={rod.varietyId}
          name={`${words.line.contents([{ varietyId: rod.varietyId, pieces: piecesLeft(rod) }])}: ${close.fate[rod.fate]}`}
          sameTouchMs={FAST_TAP_MS}
          onPress={() => onFates(new Map([...fates, [rod.varietyId, nextFate(rod.fate)]]))}
        >
          <span class={`counter-left-face counter-left-${rod.fate}`}>
            <span class="counter-left-number">
              <RingPile pieces={piecesLeft(rod)} widthPx={Math.round(sizes.namePx * 1.4)} rings={3} />
              <strong>{piecesLeft(rod)}</strong>
            </span>
            <span class="counter-swept-name">{rod.name}</span>
            <span class="counter-left-fate">{close.fate[rod.fate]}</span>
          </span>
        </Key>
      ))}
      {pages > 1 && <PageKeys page={page} pages={pages} words={words} onPage={setPage} direction="across" />}
    </div>
  )
}
