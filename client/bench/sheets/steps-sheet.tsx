import type { ComponentChildren } from 'preact'
import { changeoverList } from '../../../shared-core/day/changeover-list.ts'
import type { Act } from '../../../shared-core/day/commands.ts'
import { openingList } from '../../../shared-core/day/opening-list.ts'
import type { State } from '../../../shared-core/day/state.ts'
import type { StepLine, StepList } from '../../../shared-core/day/step-list.ts'
import type { CommandId, PersonId } from '../../../shared-core/ids.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import type { LiveState } from '../../live/shop-store.ts'
import { Key } from '../../parts/key.tsx'
import { rulerNow } from '../../parts/ruler-of-day.ts'
import type { StepView } from '../../parts/step-view.ts'
import { doneLast, stepView } from '../../parts/step-view.ts'
import type { SheetParts } from '../sheet.tsx'
import { Sheet } from '../sheet.tsx'
import { ListRows } from './list-rows.tsx'
import type { OpenSheet } from './open-sheet.ts'

export interface StepsSheetProps extends SheetParts {
  readonly state: State
  readonly shop: Shop
  readonly live: LiveState
  readonly nowMs: EpochMs
  readonly send: (act: Act) => void
  readonly open: (sheet: OpenSheet) => void
}

/** What must be done before the first load; each line by a touch. */
export function OpeningSheet(props: StepsSheetProps) {
  const { words, nowMs } = props
  const { steps } = words.shift
  const list = openingList(props.state, nowMs, rulerHere(props))
  const detail = list === null ? undefined : detailOf(list, 'opening', props)
  return (
    <Sheet {...props} title={steps.opening} detail={detail} keys={<PersonKey {...props} />}>
      <StepRows {...props} list={list} from={{ kind: 'opening' }} />
    </Sheet>
  )
}

export function detailOf(list: StepList, which: 'opening' | 'changeover', { words, nowMs }: StepsSheetProps): string {
  const { steps } = words.shift
  return `${steps.toZero(which, list.zeroAtMs, nowMs)}, ${steps.progress(list.doneCount, list.lines.length)}`
}

export function rulerHere({ state, nowMs, live }: Pick<StepsSheetProps, 'state' | 'nowMs' | 'live'>) {
  return live.shopClock === null ? null : rulerNow(state, nowMs, live.shopClock)
}

/** The list of the changeover as the screen shows it. */
export function changeoverHere(props: StepsSheetProps): StepList | null {
  return changeoverList(props.state, props.nowMs, rulerHere(props))
}

export function hasPeople({ people }: Shop): boolean {
  return [...people.values()].some((one) => !one.retired)
}

/** Who works at this screen; a touch chooses. Nothing where the shop has named nobody. */
export function PersonKey({ shop, live, words, open }: StepsSheetProps) {
  const { personId } = live.settings
  if (!hasPeople(shop)) return null
  const { steps } = words.shift
  return (
    <div class="bench-mode">
      <Key onPress={() => open({ kind: 'person' })}>
        <span class="bench-small bench-strong">
          {personId === null ? steps.who : steps.as(words.names.person(personId))}
        </span>
      </Key>
    </div>
  )
}

export interface StepRowsProps extends StepsSheetProps {
  readonly list: StepList | null
  /** The sheet to come back to. */
  readonly from: OpenSheet & { readonly kind: 'opening' | 'changeover' }
  readonly foot?: ComponentChildren
}

export function StepRows(props: StepRowsProps) {
  const { list, words, nowMs } = props
  const wording = { words, shift: words.shift, nowMs }
  const items = doneLast(list?.lines ?? []).map((line) => {
    const view = stepView(line, wording)
    const texts = [[view.when, view.who].filter((text) => text !== '').join(', ')]
    return { id: view.key, title: view.name, texts, tone: view.tone, view }
  })
  return (
    <ListRows
      {...props}
      items={items}
      nothing={words.shift.steps.nothing}
      keysOf={({ view }) => <StepKeys {...props} view={view} />}
    />
  )
}

function StepKeys(props: StepRowsProps & { readonly view: StepView }) {
  const { view, shop, words, send, live, open, state, from } = props
  const { line, name, tone } = view
  const { stepId, doughId } = line
  const { steps } = words.shift
  if (line.status === 'done') {
    const commandId = doneBy(state, line)
    if (commandId === null) return null
    const back = () => send({ type: 'takeBack', commandId })
    return <RowKey {...props} label={words.told.takeBack} name={`${words.told.takeBack}: ${name}`} onPress={back} />
  }
  const personId: PersonId | null = live.settings.personId ?? line.personId
  const isTest = line.kind === 'float-test' && doughId !== null
  const doneTone = tone === 'act' || tone === 'late' ? tone : 'strong'
  return (
    <>
      {hasPeople(shop) && (
        <RowKey
          {...props}
          label={steps.give}
          name={steps.giveTo(name)}
          onPress={() => open({ kind: 'give', stepId, doughId, from: from.kind })}
        />
      )}
      {isTest && (
        <RowKey
          {...props}
          label={steps.notReady}
          name={`${steps.notReady}: ${name}`}
          onPress={() => open({ kind: 'float', doughId, personId, from: from.kind })}
        />
      )}
      <RowKey
        {...props}
        label={isTest ? steps.passed : steps.done}
        name={`${isTest ? steps.passed : steps.done}: ${name}`}
        tone={doneTone}
        onPress={() =>
          send(
            isTest
              ? { type: 'testFloat', doughId, passed: true, lookAgainMs: null, personId }
              : { type: 'doStep', stepId, doughId, personId },
          )
        }
      />
    </>
  )
}

interface RowKeyProps extends SheetParts {
  readonly label: string
  readonly name: string
  readonly tone?: 'plain' | 'strong' | 'act' | 'late' | undefined
  readonly refusal?: string | undefined
  readonly onPress: () => void
}

/** A key at the right of a row. */
export function RowKey({ label, name, tone, refusal, onPress, room }: RowKeyProps) {
  return (
    <div class="bench-list-key" style={{ width: `${Math.round(ROW_KEY * room.keyPx)}px` }}>
      <Key tone={tone} name={name} refusal={refusal} onPress={onPress}>
        <span class="bench-small bench-strong">{label}</span>
      </Key>
    </div>
  )
}

/** Width of a key in a row, in least keys: three of them stand side by side on a phone. */
const ROW_KEY = 1.3

/** The command that did it, while it can be taken back. */
function doneBy(state: State, { stepId, doughId, kind }: StepLine): CommandId | null {
  const trace = [...state.traces].reverse().find(({ told }) => {
    if (told.type !== (kind === 'float-test' ? 'testFloat' : 'doStep')) return false
    return kind === 'float-test' ? told.doughId === doughId : told.stepId === stepId
  })
  return trace?.commandId ?? null
}
