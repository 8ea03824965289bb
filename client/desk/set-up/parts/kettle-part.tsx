import { pickableKettles } from '../../../../shared-core/shop/pickable-equipment.ts'
import {
  BOARD_PIECES_MAX,
  BOARDS_MAX,
  CARE_PIECES_MAX,
  CYCLE_MS_MAX,
  CYCLE_MS_MIN,
  KETTLE_PIECES_MAX,
  RECOVER_MS_MAX,
  REWET_MS_MAX,
} from '../../../../shared-core/shop/set-up-limits.ts'
import type { KettleCare } from '../../../../shared-core/shop/shop.ts'
import { withBoards } from '../equipment.ts'
import { NumberField } from '../fields/number-field.tsx'
import { OptionalField } from '../fields/optional-field.tsx'
import { PickField } from '../fields/pick-field.tsx'
import { SpanField } from '../fields/span-field.tsx'
import type { SetUpProps } from '../set-up-parts.ts'
import { changeTo } from '../set-up-parts.ts'

/** What one dip holds, how soon the next follows, and how many boards there are: all that the steps ask. */
export function KettleSizes(props: SetUpProps) {
  const { draft, say } = props
  const { kettle } = draft
  const set = changeTo(props, 'kettle')
  const kinds = pickableKettles(draft.profile.language)
  const like = kinds.find(({ part }) => part.pieces === kettle.pieces && part.cycleMs === kettle.cycleMs)
  return (
    <>
      <PickField
        label={say.form.pickOne}
        options={kinds.map(({ id, name }) => ({ value: id, label: name }))}
        value={like?.id ?? null}
        onChange={(id) => {
          const chosen = kinds.find((one) => one.id === id)?.part
          if (chosen !== undefined) set({ ...kettle, pieces: chosen.pieces, cycleMs: chosen.cycleMs })
        }}
      />
      <div class="setup-columns">
        <NumberField
          label={say.fields.kettle.pieces}
          value={kettle.pieces}
          min={1}
          max={KETTLE_PIECES_MAX}
          step={6}
          say={say}
          onChange={(pieces) => set({ ...kettle, pieces })}
        />
        <SpanField
          label={say.fields.kettle.cycleMs}
          ms={kettle.cycleMs}
          minMs={CYCLE_MS_MIN}
          maxMs={CYCLE_MS_MAX}
          words={props.words}
          say={say}
          onChange={(cycleMs) => set({ ...kettle, cycleMs })}
        />
      </div>
    </>
  )
}

export function BoardSizes(props: SetUpProps) {
  const { draft, say, change } = props
  const { boards } = draft
  return (
    <div class="setup-columns">
      <NumberField
        label={say.fields.boards.count}
        value={boards.count}
        min={0}
        max={BOARDS_MAX}
        step={6}
        say={say}
        onChange={(count) => change(withBoards(draft, { ...boards, count }))}
      />
      <NumberField
        label={say.fields.boards.pieces}
        value={boards.pieces}
        min={1}
        max={BOARD_PIECES_MAX}
        step={1}
        say={say}
        onChange={(pieces) => change(withBoards(draft, { ...boards, pieces }))}
      />
    </div>
  )
}

const CARES: readonly KettleCare[] = ['topUp', 'malt', 'skim', 'change']
/** Pieces from one care to the next until somebody says; common practice, no source. */
const CARE_BEGIN = 300

export function KettlePart(props: SetUpProps) {
  const { draft, say, words } = props
  const { kettle } = draft
  const set = changeTo(props, 'kettle')
  return (
    <>
      <p class="setup-caution">{say.cautions.kettle}</p>
      <KettleSizes {...props} />
      <SpanField
        label={say.fields.kettle.recoverMs}
        ms={kettle.recoverMs}
        minMs={0}
        maxMs={RECOVER_MS_MAX}
        words={words}
        say={say}
        onChange={(recoverMs) => set({ ...kettle, recoverMs })}
      />
      <h3>{say.fields.kettle.care}</h3>
      <div class="setup-columns">
        {CARES.map((care) => (
          <OptionalField
            key={care}
            label={say.options.care[care]}
            value={kettle.care[care]}
            begin={CARE_BEGIN}
            say={say}
            onChange={(every) => set({ ...kettle, care: { ...kettle.care, [care]: every } })}
          >
            {(every) => (
              <NumberField
                label={say.form.careEvery(say.options.care[care])}
                value={every}
                min={1}
                max={CARE_PIECES_MAX}
                step={100}
                say={say}
                onChange={(pieces) => set({ ...kettle, care: { ...kettle.care, [care]: pieces } })}
              />
            )}
          </OptionalField>
        ))}
      </div>
    </>
  )
}

export function BoardsPart(props: SetUpProps) {
  const { draft, say, words, change } = props
  const { boards } = draft
  return (
    <>
      <BoardSizes {...props} />
      <SpanField
        label={say.fields.boards.rewetMs}
        ms={boards.rewetMs}
        minMs={0}
        maxMs={REWET_MS_MAX}
        words={words}
        say={say}
        onChange={(rewetMs) => change(withBoards(draft, { ...boards, rewetMs }))}
      />
    </>
  )
}
