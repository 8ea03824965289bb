import { useState } from 'preact/hooks'
import type { Act } from '../../../shared-core/day/commands.ts'
import type { CareKind } from '../../../shared-core/day/said.ts'
import { CARE_KINDS } from '../../../shared-core/day/said.ts'
import type { State } from '../../../shared-core/day/state.ts'
import { boardsNow } from '../../../shared-core/line/boards.ts'
import { contacts } from '../../../shared-core/line/contacts.ts'
import { kettleCare } from '../../../shared-core/line/kettle-care.ts'
import type { ContactPlace } from '../../../shared-core/live/plan.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import { Key } from '../../parts/key.tsx'
import { Stepper } from '../../parts/stepper.tsx'
import type { GridItem, SheetParts } from '../sheet.tsx'
import { KeyGrid, Sheet } from '../sheet.tsx'
import { ListRows } from './list-rows.tsx'

export interface KettleSheetProps extends SheetParts {
  readonly state: State
  readonly shop: Shop
  readonly nowMs: EpochMs
  readonly send: (act: Act) => void
}

type Mode = 'care' | 'water' | 'boards' | 'others'

/** The kettle's water, the boards, seed trays, peel and stone: their care, what touched them, and how many boards can be used today. */
export function KettleSheet(props: KettleSheetProps) {
  const { words } = props
  const { care } = words.shift
  const [mode, setMode] = useState<Mode>('care')
  const modes: readonly (readonly [Mode, string])[] = [
    ['care', care.cares],
    ['water', care.inWater],
    ['boards', care.onBoards],
    ['others', care.onOthers],
  ]
  const keys = modes.map(([one, label]) => (
    <div key={one} class="bench-mode">
      <Key chosen={one === mode} onPress={() => setMode(one)}>
        <span class="bench-small">{label}</span>
      </Key>
    </div>
  ))
  return (
    <Sheet {...props} title={care.title} keys={keys}>
      {mode === 'care' ? <Cares {...props} /> : <Contacts {...props} places={PLACES[mode]} />}
    </Sheet>
  )
}

const PLACES: { readonly [mode in Exclude<Mode, 'care'>]: readonly ContactPlace[] } = {
  water: ['kettle'],
  boards: ['boards'],
  others: ['trays', 'peel', 'stone'],
}

/** Under the keys of the cares: a row for the boards. */
const BOARDS_ROWS = 1

function Cares(props: KettleSheetProps) {
  const { state, shop, nowMs, words, sizes, room, send } = props
  const { care } = words.shift
  const now = kettleCare(state, nowMs)
  const item = (kind: CareKind): GridItem => {
    const reminder = now.reminders.find((one) => one.care === kind)
    const done = state.cares.get(kind)
    const boils = kind === 'boiling' && now.boilsAgainAtMs !== null ? [care.boilsIn(now.boilsAgainAtMs, nowMs)] : []
    const told = reminder === undefined ? [] : [care.boiled(reminder.boiled, reminder.atMs), care.every(reminder.every)]
    const last = reminder !== undefined || done === undefined ? [] : [words.shift.steps.doneAt(done.atMs)]
    return {
      id: kind,
      label: care.care(kind),
      details: [...boils, ...told, ...last],
      tone: reminder?.isDue === true ? 'act' : undefined,
      onPress: () => send({ type: 'care', care: kind }),
    }
  }
  const usable = boardsNow(state, nowMs).count
  const { sheet } = words.bench
  return (
    <div class="bench-cares">
      <KeyGrid
        words={words}
        sizes={sizes}
        room={room}
        columns={room.widthPx < 6 * room.keyPx ? 2 : 3}
        rows={Math.max(2, room.rows - BOARDS_ROWS)}
        widthPx={room.widthPx}
        items={CARE_KINDS.map(item)}
      />
      <div class="bench-usable">
        <strong>{care.usable}</strong>
        <Stepper
          name={care.usable}
          value={usable}
          min={0}
          max={shop.boards.count}
          steps={[1]}
          lessName={(step) => sheet.less(care.board.one, step)}
          moreName={(step) => sheet.plus(care.board.one, step)}
          limitWords={sheet}
          onChange={(value) => send({ type: 'setBoards', usable: value })}
        />
      </div>
    </div>
  )
}

/** What touched, page by page: an allergen that does not fit must not be left out. */
function Contacts(props: KettleSheetProps & { readonly places: readonly ContactPlace[] }) {
  const { state, places, words, room } = props
  const { care } = words.shift
  const found = contacts(state)
  const items = places.flatMap((place) =>
    found[place].map((one) => ({
      id: `${place} ${one.varietyId ?? one.doughId}`,
      title: titleOf(place, care.contact(one.name, one.pieces), care.places),
      texts: one.contains.length === 0 ? [] : [care.contains(one.contains)],
    })),
  )
  return (
    <div class="bench-notes">
      <div class="bench-quiet">{care.caution}</div>
      <ListRows
        {...props}
        room={{ ...room, rows: Math.max(2, room.rows - 1), rowPx: room.keyPx }}
        items={items}
        nothing={care.noContact}
        keysOf={() => null}
      />
    </div>
  )
}

/** Where a page tells of several places, each line says which. */
function titleOf(
  place: ContactPlace,
  text: string,
  names: { readonly [place in 'trays' | 'peel' | 'stone']: string },
): string {
  return place === 'kettle' || place === 'boards' ? text : `${names[place]}: ${text}`
}
