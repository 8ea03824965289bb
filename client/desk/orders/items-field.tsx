import { TIMES_MAX } from '../../../shared-core/orders/order-limits.ts'
import { inUse } from '../../../shared-core/shop/in-order.ts'
import { ALLERGENS } from '../../../shared-core/shop/stages.ts'
import { AddPick } from './add-pick.tsx'
import { Tick } from './lines-field.tsx'
import { NumberField } from './number-field.tsx'
import type { ItemDraft } from './order-draft.ts'
import { withAt } from './order-draft.ts'
import type { OrdersParts } from './parts.ts'

interface ItemsFieldProps extends OrdersParts {
  readonly items: readonly ItemDraft[]
  /** Something of what is made to order is begun: it stays, whatever is typed. */
  readonly isBegun: boolean
  readonly onChange: (items: readonly ItemDraft[]) => void
}

/** What is made to order, and tubs and bottles that are handed over as they are. */
export function ItemsField(props: ItemsFieldProps) {
  const { items, isBegun, shop, say, onChange } = props
  const menu = inUse(shop.menu)
  if (menu.length === 0 && items.length === 0) return null
  const add = (itemId: ItemDraft['itemId']) =>
    onChange([...items, { itemId, varietyId: null, toasted: false, without: [], more: [], allergies: [], times: 1 }])
  return (
    <fieldset class="orders-part">
      <legend>{say.form.parts.made}</legend>
      {isBegun && <p class="desk-quiet">{say.form.begunStays}</p>}
      {items.map((item, at) => (
        <ItemRow key={at} {...props} item={item} at={at} onItem={(next) => onChange(withAt(items, at, next))} />
      ))}
      <div class="desk-line">
        <AddPick label={say.form.addItem} options={menu} onPick={add} />
      </div>
    </fieldset>
  )
}

interface ItemRowProps extends ItemsFieldProps {
  readonly item: ItemDraft
  readonly at: number
  readonly onItem: (item: ItemDraft | null) => void
}

function ItemRow(props: ItemRowProps) {
  const { item, at, shop, words, say, onItem } = props
  const of = shop.menu.get(item.itemId)
  const varieties = inUse(shop.varieties)
  const set = (some: Partial<ItemDraft>) => onItem({ ...item, ...some })
  const name = words.names.menuItem(item.itemId)
  return (
    <div class="orders-line orders-item" role="group" aria-label={name}>
      <strong class="orders-item-name">{name}</strong>
      <NumberField label={say.form.times} value={item.times} most={TIMES_MAX} onChange={(times) => set({ times })} />
      {of?.onBagel === true && (
        <label class="desk-field">
          {say.form.bagel}
          <select
            value={item.varietyId ?? ''}
            onChange={(event) =>
              set({ varietyId: varieties.find(({ id }) => id === event.currentTarget.value)?.id ?? null })
            }
          >
            <option value="">?</option>
            {varieties.map(({ id, name: variety }) => (
              <option key={id} value={id}>
                {variety}
              </option>
            ))}
          </select>
        </label>
      )}
      {of?.canToast === true && (
        <Tick label={say.said.toasted} isOn={item.toasted} onChange={(toasted) => set({ toasted })} />
      )}
      <button
        type="button"
        class="orders-remove"
        aria-label={`${name}: ${say.form.leaveOut}`}
        onClick={() => onItem(null)}
      >
        ×
      </button>
      {of !== undefined && of.steps.length > 0 && <Wishes {...props} at={at} />}
    </div>
  )
}

/** Fillings left out or doubled, and what the guest must not get. */
function Wishes({ item, shop, words, say, onItem }: ItemRowProps) {
  const set = (some: Partial<ItemDraft>) => onItem({ ...item, ...some })
  const ids = shop.menu.get(item.itemId)?.portions.map(({ portionId }) => portionId) ?? []
  const open = ids.filter((id) => !item.without.includes(id) && !item.more.includes(id))
  const options = open.map((id) => ({ id, name: words.names.portion(id) }))
  const allergens = ALLERGENS.filter((one) => !item.allergies.includes(one))
  const chip = (key: string, text: string, onTake: () => void, isStrong = false) => (
    <button
      key={key}
      type="button"
      class={isStrong ? 'orders-chip orders-allergy' : 'orders-chip'}
      aria-label={`${say.form.leaveOut}: ${text}`}
      onClick={onTake}
    >
      {`${text} ×`}
    </button>
  )
  return (
    <div class="orders-without">
      {item.allergies.map((one) =>
        chip(
          `a${one}`,
          say.said.allergy([one]),
          () => set({ allergies: item.allergies.filter((other) => other !== one) }),
          true,
        ),
      )}
      {item.without.map((id) =>
        chip(`w${id}`, `${say.form.without} ${words.names.portion(id)}`, () =>
          set({ without: item.without.filter((other) => other !== id) }),
        ),
      )}
      {item.more.map((id) =>
        chip(`m${id}`, `+ ${words.names.portion(id)}`, () => set({ more: item.more.filter((other) => other !== id) })),
      )}
      {options.length > 0 && (
        <>
          <AddPick label={say.form.leave} options={options} onPick={(id) => set({ without: [...item.without, id] })} />
          <AddPick label={say.form.more} options={options} onPick={(id) => set({ more: [...item.more, id] })} />
        </>
      )}
      <AddPick
        label={say.form.addAllergy}
        options={allergens.map((id) => ({ id, name: say.said.allergen[id] }))}
        onPick={(id) => set({ allergies: [...item.allergies, id] })}
      />
    </div>
  )
}
