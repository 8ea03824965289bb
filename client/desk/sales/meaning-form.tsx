import { useState } from 'preact/hooks'
import type { Meaning } from '../../../shared-core/live/sales-import.ts'
import { inUse } from '../../../shared-core/shop/in-order.ts'
import type { Variety } from '../../../shared-core/shop/shop.ts'
import { Choice } from './form-fields.tsx'
import { begun, isWhole, KINDS } from './meaning-edit.ts'
import { AmongField, PackField, PiecesField, VarietyField } from './meaning-fields.tsx'
import type { SalesParts } from './sales-place.tsx'

interface MeaningFormProps extends SalesParts {
  readonly name: string
  /** What it means or perhaps means; null: nothing is like it. */
  readonly begin: Meaning | null
  readonly canForget: boolean
  readonly onSave: (meaning: Meaning | null) => void
  readonly onCancel: () => void
}

/** Says what one name of the till means. */
export function MeaningForm({ name, begin, canForget, onSave, onCancel, shop, say }: MeaningFormProps) {
  const varieties = inUse(shop.varieties)
  const [meaning, setMeaning] = useState<Meaning>(begin ?? begun('variety', varieties))
  return (
    <form
      class="sales-meaning-form"
      aria-label={name}
      onSubmit={(event) => {
        event.preventDefault()
        if (isWhole(meaning)) onSave(meaning)
      }}
    >
      <Choice
        label={say.names.means}
        options={KINDS.map((value) => ({ value, text: say.names.kind[value] }))}
        value={meaning.kind}
        onChange={(kind) => setMeaning(begun(kind, varieties, meaning))}
      />
      <Fields meaning={meaning} varieties={varieties} say={say} onChange={setMeaning} />
      <p class="desk-quiet desk-small">{say.names.kindHint[meaning.kind]}</p>
      <div class="desk-line">
        <button type="submit" class="desk-strong" disabled={!isWhole(meaning)}>
          {say.names.save}
        </button>
        <button type="button" onClick={onCancel}>
          {say.names.cancel}
        </button>
        {canForget && (
          <button type="button" onClick={() => onSave(null)}>
            {say.names.forget}
          </button>
        )}
      </div>
    </form>
  )
}

interface FieldsProps extends Pick<SalesParts, 'say'> {
  readonly meaning: Meaning
  readonly varieties: readonly Variety[]
  readonly onChange: (meaning: Meaning) => void
}

function Fields({ meaning, varieties, say, onChange }: FieldsProps) {
  const of = { varieties, say }
  switch (meaning.kind) {
    case 'variety':
      return (
        <>
          <PiecesField say={say} pieces={meaning.pieces} onChange={(pieces) => onChange({ ...meaning, pieces })} />
          <VarietyField
            {...of}
            id={meaning.varietyId}
            onChange={(varietyId) => {
              if (varietyId !== null) onChange({ ...meaning, varietyId })
            }}
          />
        </>
      )
    case 'pack':
      return <PackField {...of} lines={meaning.lines} onChange={(lines) => onChange({ ...meaning, lines })} />
    case 'unnamed':
      return (
        <>
          <PiecesField say={say} pieces={meaning.pieces} onChange={(pieces) => onChange({ ...meaning, pieces })} />
          <AmongField {...of} among={meaning.among} onChange={(among) => onChange({ ...meaning, among })} />
        </>
      )
    case 'kitchen':
      return (
        <>
          <PiecesField say={say} pieces={meaning.pieces} onChange={(pieces) => onChange({ ...meaning, pieces })} />
          <VarietyField
            {...of}
            id={meaning.varietyId}
            canBeAny
            onChange={(varietyId) => onChange({ ...meaning, varietyId })}
          />
        </>
      )
    case 'nothing':
      return null
  }
}
