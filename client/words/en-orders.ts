import { ALLERGEN_NAMES } from './allergens.ts'
import type { OrderWords, SaidItem, SaidLine } from './orders.ts'
import type { Words } from './words.ts'

const ALLERGEN = ALLERGEN_NAMES.en

export function enOrders({ names }: Words): OrderWords {
  const amount = (dozens: number, loose: number) =>
    dozens === 0 ? String(loose) : `${dozens} dozen${loose === 0 ? '' : ` and ${loose}`}`
  const mixedNo = (without: readonly string[]) => (without.length === 0 ? 'mixed' : `mixed, no ${orList(without)}`)
  const line = ({ varietyId, without, dozens, pieces, sliced, bagged }: SaidLine, dozenPieces: number) => {
    // A shop that counts its dozen otherwise by now keeps what was promised.
    const loose = pieces - dozens * dozenPieces
    const some = loose < 0 ? String(pieces) : amount(dozens, loose)
    const what = varietyId === null ? mixedNo(without.map(names.variety)) : names.variety(varietyId)
    return [`${some} ${what}`, ...(sliced ? ['sliced'] : []), ...(bagged ? ['bagged'] : [])].join(', ')
  }
  const allergy = (allergens: SaidItem['allergies']) => `ALLERGY: ${allergens.map((one) => ALLERGEN[one]).join(', ')}`
  return {
    way: { here: 'waits here', pickUp: 'fetched', delivery: 'delivered' },
    mixed: 'mixed',
    mixedNo,
    amount,
    line,
    lines: (lines, dozenPieces) => lines.map((one) => line(one, dozenPieces)).join('; '),
    item: ({ itemId, varietyId, toasted, without, more, allergies }, times) => {
      const on = varietyId === null ? '' : ` on ${names.variety(varietyId)}`
      const parts = [
        `${times === 1 ? '' : `${times} × `}${names.menuItem(itemId)}${on}`,
        ...(toasted ? ['toasted'] : []),
        ...without.map((id) => `no ${names.portion(id)}`),
        ...more.map((id) => `more ${names.portion(id)}`),
      ]
      return `${allergies.length === 0 ? '' : `${allergy(allergies)} – `}${parts.join(', ')}`
    },
    allergen: ALLERGEN,
    allergy,
    paid: 'paid',
    notPaid: 'not paid',
    sliced: 'sliced',
    bagged: 'bagged',
    toasted: 'toasted',
  }
}

/** @example orList(['Raisin', 'Onion']) // 'Raisin or Onion' */
function orList(names: readonly string[]): string {
  return [names.slice(0, -1).join(', '), ...names.slice(-1)].filter((part) => part !== '').join(' or ')
}
