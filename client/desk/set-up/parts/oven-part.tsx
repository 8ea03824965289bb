import { shelfId } from '../../../../shared-core/ids.ts'
import { inUse } from '../../../../shared-core/shop/in-order.ts'
import {
  FLOOR_BOARDS_MAX,
  HANDLING_MS_MAX,
  IN_USE_MAX,
  SHELF_PIECES_MAX,
  SLOTS_MAX,
} from '../../../../shared-core/shop/set-up-limits.ts'
import type { OvenKind, Shelf } from '../../../../shared-core/shop/shop.ts'
import { withFloorBoards, withOvenKind, withShelfCount, withShelfPieces } from '../equipment.ts'
import { ClockField } from '../fields/clock-field.tsx'
import { NumberField } from '../fields/number-field.tsx'
import { OptionalField } from '../fields/optional-field.tsx'
import { PickField } from '../fields/pick-field.tsx'
import { SpanField } from '../fields/span-field.tsx'
import { TemperatureField } from '../fields/temperature-field.tsx'
import { SHELVES } from '../lists.ts'
import type { SetUpProps } from '../set-up-parts.ts'
import { changeTo } from '../set-up-parts.ts'
import { ListPart } from './list-part.tsx'
import { OvenDrawing } from './oven-drawing.tsx'
import { Wrong } from './wrong.tsx'

const KINDS: readonly OvenKind[] = ['shelves', 'rotating', 'hearth']

/** Which oven, and how much goes in: all that the steps ask. */
export function OvenSizes(props: SetUpProps) {
  const { draft, say, change } = props
  const used = inUse(draft.shelves)
  const [first] = used
  return (
    <>
      <PickField
        label={say.fields.oven.kind}
        isTall
        options={KINDS.map((kind) => ({
          value: kind,
          label: say.options.ovenKind[kind].name,
          hint: say.options.ovenKind[kind].hint,
          drawing: <OvenDrawing kind={kind} />,
        }))}
        value={draft.oven.kind}
        onChange={(kind) => change(withOvenKind(draft, kind))}
      />
      {draft.oven.kind === 'hearth' ? (
        <NumberField
          label={say.fields.shelf.floorBoards}
          value={first?.floorBoards ?? 1}
          min={1}
          max={FLOOR_BOARDS_MAX}
          step={1}
          say={say}
          onChange={(boards) => change(withFloorBoards(draft, boards))}
        />
      ) : (
        <div class="setup-columns">
          <NumberField
            label={say.form.shelves}
            value={used.length}
            min={1}
            max={IN_USE_MAX.shelf}
            step={1}
            say={say}
            onChange={(count) => change(withShelfCount(draft, count))}
          />
          <NumberField
            label={say.form.eachShelf}
            value={first?.pieces ?? 1}
            min={1}
            max={SHELF_PIECES_MAX}
            step={12}
            say={say}
            onChange={(pieces) => change(withShelfPieces(draft, pieces))}
          />
        </div>
      )}
    </>
  )
}

/** The oven whole: its shelves one by one, times at the door, temperatures. */
export function OvenPart(props: SetUpProps) {
  const { draft, say, words, misfits } = props
  const { oven, profile } = draft
  const set = changeTo(props, 'oven')
  const floor = oven.kind === 'hearth' ? inUse(draft.shelves)[0] : undefined
  const hot = profile.temperature === 'F' ? 475 : 245
  const begin = { degrees: hot, unit: profile.temperature }
  return (
    <>
      <p class="setup-caution">{say.cautions.oven}</p>
      <OvenSizes {...props} />
      <Wrong misfits={misfits.filter(({ entity, id }) => entity === 'shelf' && id === null)} say={say} />
      <SpanField
        label={say.fields.oven.handlingMs}
        ms={oven.handlingMs}
        minMs={0}
        maxMs={HANDLING_MS_MAX}
        words={words}
        say={say}
        onChange={(handlingMs) => set({ ...oven, handlingMs })}
      />
      <div class="setup-columns">
        {(['bakeAt', 'secondAt'] as const).map((field) => (
          <TemperatureField
            key={field}
            label={say.fields.oven[field]}
            value={oven[field]}
            begin={begin}
            unit={profile.temperature}
            say={say}
            onChange={(value) => set({ ...oven, [field]: value })}
          />
        ))}
      </div>
      {floor !== undefined && <Slots {...props} shelf={floor} set={(shelf) => props.change([SHELVES.change(shelf)])} />}
      {oven.kind !== 'hearth' && (
        <>
          <h3>{say.form.oneByOne}</h3>
          <ListPart
            kind={SHELVES}
            parts={props}
            like={likeOf(inUse(draft.shelves))}
            line={({ pieces, slots }) =>
              [words.line.pieces(pieces), ...(slots === 0 ? [] : [say.kitchen.slotsLine(slots)])].join(', ')
            }
          >
            {(shelf, change) => (
              <>
                <NumberField
                  label={say.fields.shelf.pieces}
                  value={shelf.pieces}
                  min={1}
                  max={SHELF_PIECES_MAX}
                  step={12}
                  say={say}
                  onChange={(pieces) => change({ ...shelf, pieces })}
                />
                <Slots {...props} shelf={shelf} set={change} />
                <EmptyBy {...props} shelf={shelf} set={change} />
              </>
            )}
          </ListPart>
        </>
      )}
    </>
  )
}

interface ShelfProps extends SetUpProps {
  readonly shelf: Shelf
  readonly set: (shelf: Shelf) => void
}

/** How much of the second menu bakes on it at once. */
function Slots({ say, shelf, set }: ShelfProps) {
  return (
    <>
      <NumberField
        label={say.fields.shelf.slots}
        value={shelf.slots}
        min={0}
        max={SLOTS_MAX}
        step={1}
        say={say}
        onChange={(slots) => set({ ...shelf, slots })}
      />
      <p class="setup-hint">{say.kitchen.slotsHint}</p>
    </>
  )
}

/** A shelf that is given to the second menu before the others are. */
function EmptyBy({ draft, say, shelf, set }: ShelfProps) {
  const { changeoverFromMinute, closeMinute } = draft.hours
  const end = changeoverFromMinute ?? closeMinute
  const label = say.fields.shelf.emptyByMinute
  return (
    <>
      <OptionalField
        label={label}
        value={shelf.emptyByMinute}
        begin={Math.max(0, end - HOUR_MINUTES)}
        say={say}
        onChange={(emptyByMinute) => set({ ...shelf, emptyByMinute })}
      >
        {(minute) => (
          <ClockField
            label={label}
            minute={minute}
            say={say}
            onChange={(emptyByMinute) => set({ ...shelf, emptyByMinute })}
          />
        )}
      </OptionalField>
      <p class="setup-hint">
        {shelf.emptyByMinute !== null && shelf.emptyByMinute >= end ? say.baking.emptyByLate : say.baking.emptyByHint}
      </p>
    </>
  )
}

const HOUR_MINUTES = 60

/** A new shelf is as large as the one above it. */
function likeOf(shelves: readonly Shelf[]): Shelf {
  const last = shelves[shelves.length - 1]
  return {
    id: shelfId('new'),
    name: '',
    order: 0,
    pieces: last?.pieces ?? 72,
    emptyByMinute: null,
    floorBoards: null,
    slots: last?.slots ?? 0,
    retired: false,
  }
}
