import type { VarietyId } from '../../../shared-core/ids.ts'
import { inUse } from '../../../shared-core/shop/in-order.ts'
import { AddPick } from './add-pick.tsx'
import type { LineDraft } from './asked-draft.ts'
import { newLine, piecesAsked } from './asked-draft.ts'
import { NumberField } from './number-field.tsx'
import { withAt, withLine } from './order-draft.ts'
import type { OrdersParts } from './parts.ts'

interface LinesFieldProps extends OrdersParts {
  readonly lines: readonly LineDraft[]
  readonly onChange: (lines: readonly LineDraft[]) => void
}

const DOZENS_MAX = 400
const PIECES_MAX = 10_000

/** Pieces that are ordered, a row for each variety and the mixed ones. */
export function LinesField(props: LinesFieldProps) {
  const { lines, shop, words, say, onChange } = props
  const { dozenPieces } = shop.orders
  const pieces = piecesAsked(lines, dozenPieces)
  const told = [
    ...(pieces > 0 ? [say.form.total(words.line.pieces(pieces))] : []),
    ...(dozenPieces === 12 ? [] : [say.form.dozenOf(dozenPieces)]),
  ]
  return (
    <fieldset class="orders-part">
      <legend>{say.form.parts.what}</legend>
      {lines.map((line, at) => (
        <LineRow
          key={at}
          {...props}
          line={line}
          at={at}
          onLine={(next) => onChange(next === null && lines.length === 1 ? [newLine()] : withAt(lines, at, next))}
        />
      ))}
      <div class="desk-line">
        <AddPick
          label={say.form.addLine}
          options={inUse(shop.varieties)}
          onPick={(id) => onChange(withLine(lines, newLine(id)))}
        />
        <button type="button" onClick={() => onChange([...lines, newLine()])}>
          {say.form.addMixed}
        </button>
        <span class="desk-quiet">{told.join(' ')}</span>
      </div>
    </fieldset>
  )
}

interface LineRowProps extends LinesFieldProps {
  readonly line: LineDraft
  readonly at: number
  readonly onLine: (line: LineDraft | null) => void
}

function LineRow(props: LineRowProps) {
  const { line, at, shop, say, onLine } = props
  const varieties = inUse(shop.varieties)
  const set = (some: Partial<LineDraft>) => onLine({ ...line, ...some })
  return (
    <div class="orders-line" role="group" aria-label={say.form.lineOf(at + 1, say.form.variety)}>
      <label class="desk-field">
        {say.form.variety}
        <select
          value={line.varietyId ?? ''}
          onChange={(event) =>
            set({ varietyId: varieties.find(({ id }) => id === event.currentTarget.value)?.id ?? null })
          }
        >
          <option value="">{say.said.mixed}</option>
          {varieties.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </select>
      </label>
      <NumberField
        label={say.form.dozens}
        value={line.dozens}
        most={DOZENS_MAX}
        onChange={(dozens) => set({ dozens })}
      />
      <NumberField
        label={say.form.pieces}
        value={line.pieces}
        most={PIECES_MAX}
        onChange={(pieces) => set({ pieces })}
      />
      <Tick label={say.said.sliced} isOn={line.sliced} onChange={(sliced) => set({ sliced })} />
      <Tick label={say.said.bagged} isOn={line.bagged} onChange={(bagged) => set({ bagged })} />
      <button
        type="button"
        class="orders-remove"
        aria-label={say.form.lineOf(at + 1, say.form.leaveOut)}
        onClick={() => onLine(null)}
      >
        ×
      </button>
      {line.varietyId === null && <Without {...props} />}
    </div>
  )
}

/** What a mixed line must not have. */
function Without({ line, shop, words, say, onLine }: LineRowProps) {
  const others = inUse(shop.varieties).filter(({ id }) => !line.without.includes(id))
  const set = (without: readonly VarietyId[]) => onLine({ ...line, without })
  return (
    <div class="orders-without">
      {line.without.map((id) => (
        <button
          key={id}
          type="button"
          class="orders-chip"
          aria-label={`${say.form.leaveOut}: ${say.form.without} ${words.names.variety(id)}`}
          onClick={() => set(line.without.filter((one) => one !== id))}
        >
          {`${say.form.without} ${words.names.variety(id)} ×`}
        </button>
      ))}
      {others.length > 1 && (
        <AddPick label={say.form.addWithout} options={others} onPick={(id) => set([...line.without, id])} />
      )}
    </div>
  )
}

interface TickProps {
  readonly label: string
  readonly isOn: boolean
  readonly onChange: (isOn: boolean) => void
}

export function Tick({ label, isOn, onChange }: TickProps) {
  return (
    <label class="orders-tick">
      <input type="checkbox" checked={isOn} onChange={(event) => onChange(event.currentTarget.checked)} />
      {label}
    </label>
  )
}
