import { ALLERGEN_NAMES } from './allergens.ts'
import type { OrderWords, SaidItem, SaidLine } from './orders.ts'
import type { Words } from './words.ts'

const ALLERGEN = ALLERGEN_NAMES.es

export function esOrders({ names }: Words): OrderWords {
  const amount = (dozens: number, loose: number) =>
    dozens === 0 ? String(loose) : `${dozens} ${dozens === 1 ? 'docena' : 'docenas'}${loose === 0 ? '' : ` y ${loose}`}`
  const mixedNo = (without: readonly string[]) => (without.length === 0 ? 'surtido' : `surtido, sin ${orList(without)}`)
  const line = ({ varietyId, without, dozens, pieces, sliced, bagged }: SaidLine, dozenPieces: number) => {
    const loose = pieces - dozens * dozenPieces
    const some = loose < 0 ? String(pieces) : amount(dozens, loose)
    const what = varietyId === null ? mixedNo(without.map(names.variety)) : names.variety(varietyId)
    return [`${some} ${what}`, ...(sliced ? ['rebanado'] : []), ...(bagged ? ['embolsado'] : [])].join(', ')
  }
  const allergy = (allergens: SaidItem['allergies']) => `ALERGIA: ${allergens.map((one) => ALLERGEN[one]).join(', ')}`
  return {
    way: { here: 'espera aquí', pickUp: 'lo recogen', delivery: 'a domicilio' },
    mixed: 'surtido',
    mixedNo,
    amount,
    line,
    lines: (lines, dozenPieces) => lines.map((one) => line(one, dozenPieces)).join('; '),
    item: ({ itemId, varietyId, toasted, without, more, allergies }, times) => {
      const on = varietyId === null ? '' : ` en ${names.variety(varietyId)}`
      const parts = [
        `${times === 1 ? '' : `${times} × `}${names.menuItem(itemId)}${on}`,
        ...(toasted ? ['tostado'] : []),
        ...without.map((id) => `sin ${names.portion(id)}`),
        ...more.map((id) => `más ${names.portion(id)}`),
      ]
      return `${allergies.length === 0 ? '' : `${allergy(allergies)} – `}${parts.join(', ')}`
    },
    allergen: ALLERGEN,
    allergy,
    paid: 'pagado',
    notPaid: 'sin pagar',
    sliced: 'rebanado',
    bagged: 'embolsado',
    toasted: 'tostado',
  }
}

function orList(names: readonly string[]): string {
  return [names.slice(0, -1).join(', '), ...names.slice(-1)].filter((part) => part !== '').join(' ni ')
}
