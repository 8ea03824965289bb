import { useState } from 'preact/hooks'
import type { Act } from '../../../shared-core/day/commands.ts'
import type { State } from '../../../shared-core/day/state.ts'
import type { Plan } from '../../../shared-core/live/plan.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import type { BenchWords } from '../../words/bench.ts'
import type { GridItem, SheetParts } from '../sheet.tsx'
import { GridKey, KeyGrid, Sheet } from '../sheet.tsx'
import type { BenchView } from '../view.ts'
import type { DoughChoice, DoughJob, StartStage } from './dough-choice.ts'
import { doughAct, doughChoices, firstPieces } from './dough-choice.ts'
import { PiecesStepper } from './pieces-stepper.tsx'
import { pullsText } from './pulls-text.ts'
import { splitRoom } from './split.ts'

export interface DoughSheetProps extends SheetParts {
  readonly state: State
  readonly shop: Shop
  /** Null: loads are not advised. */
  readonly plan: Plan | null
  readonly nowMs: EpochMs
  /** For portions of the second menu, which are pulled as dough is. */
  readonly view: Pick<BenchView, 'kitchenActs'>
  readonly job: DoughJob
  readonly send: (act: Act) => void
}

const PIECES_MAX = 5_000
const HOURS_MAX = 96
/** Dough carried in chilled has usually stood the night. */
const NIGHT_HOURS = 12

/** Trays or pieces of a dough: which, how many, and for dough that comes in also where and how long it has stood. */
export function DoughSheet(props: DoughSheetProps) {
  const { state, shop, job, words, room } = props
  const choices = doughChoices(state, shop, job)
  const [chosenKey, setChosenKey] = useState<string | null>(null)
  const chosen = choices.find((one) => keyOf(one) === chosenKey) ?? choices[0]
  const { leftPx } = splitRoom(room)
  const items = choices.map((one) => ({
    id: keyOf(one),
    label: nameOf(one, words),
    details: [
      ...(one.atHand > 0 ? [words.line.pieces(one.atHand)] : []),
      ...windowText(one, props),
      ...(one.proofing > 0 ? [words.bench.pieces.proofing(one.proofing)] : []),
    ],
    chosen: one === chosen,
    onPress: () => setChosenKey(keyOf(one)),
  }))
  return (
    <Sheet {...props} title={words.bench.pieces[job]} detail={job === 'pull' ? pullsText(props) : undefined}>
      <KeyGrid
        {...props}
        columns={Math.max(1, Math.floor((leftPx + room.gapPx) / (2 * room.keyPx)))}
        rows={room.rows}
        widthPx={leftPx}
        items={items}
        nothing={words.bench.station.nothingPlanned}
      />
      {chosen !== undefined && <Amount key={keyOf(chosen)} {...props} chosen={chosen} />}
    </Sheet>
  )
}

/** So long before the end of its window a dough's end is told. */
const USE_SOON_MS = 24 * 3_600_000

function windowText({ useByMs }: DoughChoice, { nowMs, words }: DoughSheetProps): readonly string[] {
  if (useByMs === null || useByMs - nowMs > USE_SOON_MS) return []
  const { past, boilBy } = words.bench.station
  return [nowMs > useByMs ? past(useByMs) : boilBy(useByMs)]
}

type AmountProps = DoughSheetProps & { readonly chosen: DoughChoice }

/** How many, and the key that does it. */
function Amount(props: AmountProps) {
  const { chosen, shop, job, words, sizes, room, nowMs, send, onClose } = props
  const [pieces, setPieces] = useState(() => firstPieces(chosen, job, shop))
  const [stage, setStage] = useState<StartStage>(() => usualStage(chosen))
  const [counted, setCounted] = useState<number | null>(null)
  const { rightPx } = splitRoom(room)
  const hours = counted ?? (job === 'carryIn' && stage === 'chill' ? NIGHT_HOURS : 0)
  const take: GridItem = {
    id: 'take',
    label: takeLabel(props, { pieces, stage }),
    tone: 'act',
    onPress: () => {
      send(doughAct(job, chosen, { pieces, stage, hours, nowMs }))
      onClose()
    },
  }
  return (
    <div class="bench-column" style={{ width: `${rightPx}px` }}>
      <PiecesStepper
        isNarrow={splitRoom(room).isNarrow}
        words={words}
        value={pieces}
        min={1}
        max={PIECES_MAX}
        steps={[...new Set([1, chosen.trayPieces])]}
        detail={pieces % chosen.trayPieces === 0 ? words.line.trays(pieces / chosen.trayPieces) : undefined}
        onChange={setPieces}
      />
      {(job === 'carryIn' || job === 'shape') && <Stages {...props} stage={stage} onChoose={setStage} />}
      {job === 'carryIn' && (
        <PiecesStepper
          isNarrow={splitRoom(room).isNarrow}
          words={words}
          value={hours}
          min={0}
          max={HOURS_MAX}
          steps={[1, 6]}
          counted={words.bench.pieces.hours}
          onChange={setCounted}
        />
      )}
      <GridKey item={take} widthPx={rightPx} heightPx={room.rowPx} sizes={sizes} />
    </div>
  )
}

function Stages(props: AmountProps & { readonly stage: StartStage; readonly onChoose: (stage: StartStage) => void }) {
  const { chosen, stage, words, room, onChoose } = props
  const items = chosen.stages.map((one) => ({
    id: one,
    label: words.line.stageTitle(one),
    chosen: one === stage,
    onPress: () => onChoose(one),
  }))
  return <KeyGrid {...props} columns={3} rows={1} widthPx={splitRoom(room).rightPx} items={items} />
}

function takeLabel(
  { job, words, chosen }: AmountProps,
  { pieces, stage }: { pieces: number; stage: StartStage },
): string {
  const { doughId, varietyId, trayPieces } = chosen
  if (job === 'carryIn' || job === 'shape') return words.bench.pieces.put(pieces, nameOf(chosen, words), stage)
  const trays = pieces % trayPieces === 0 ? pieces / trayPieces : null
  const said = job === 'pull' && trays !== null ? { trays } : { pieces }
  return words.acts.name({ act: job, doughId, varietyId, ...said })
}

function nameOf({ doughId, varietyId }: DoughChoice, { names }: BenchWords): string {
  return varietyId === null ? names.dough(doughId) : names.variety(varietyId)
}

function usualStage({ stages }: DoughChoice): StartStage {
  return stages.includes('chill') ? 'chill' : (stages[0] ?? 'chill')
}

function keyOf({ doughId, varietyId }: DoughChoice): string {
  return `${doughId} ${varietyId ?? ''}`
}
