import { ALLERGEN_NAMES } from './allergens.ts'
import { joined, listed } from './joined.ts'
import type { KitchenActWords, SaidKitchenAct } from './kitchen-acts.ts'
import { marksOnce } from './kitchen-acts.ts'
import type { Words } from './words.ts'

export function esKitchenActs({ names, line }: Words): KitchenActWords {
  const what = ({ items }: SaidKitchenAct) =>
    line.list(
      items.map(({ itemId, varietyId, count }) =>
        joined(
          count === 1 ? '' : String(count),
          names.menuItem(itemId),
          varietyId === null ? '' : `en ${names.variety(varietyId)}`,
        ),
      ),
    )
  const shelf = ({ shelfId }: SaidKitchenAct) => (shelfId === null ? 'el horno' : names.shelf(shelfId))
  const act = (said: SaidKitchenAct): readonly [string, string] => {
    switch (said.act) {
      case 'make':
        return [`preparar ${what(said)}`, 'preparar']
      case 'made':
        return [`terminar ${what(said)}`, 'terminar']
      case 'in':
        return [`meter ${what(said)} en ${shelf(said)}`, `meter en ${shelf(said)}`]
      case 'turn':
        return [`girar ${what(said)} en ${shelf(said)}`, `girar ${shelf(said)}`]
      case 'move':
        return [`mover ${what(said)} en ${shelf(said)}`, `mover ${shelf(said)}`]
      case 'out':
        return [`sacar ${what(said)} de ${shelf(said)}`, `sacar de ${shelf(said)}`]
      case 'handOver':
        return ['entregar', 'entregar']
      case 'pull': {
        const portion = said.portionId === null ? '' : names.portion(said.portionId)
        const pull = joined('traer', said.trays === null ? '' : line.trays(said.trays), portion)
        return [pull, pull]
      }
    }
  }
  return {
    act: (said) => {
      const [whole, short] = act(said)
      const marks = said.marks.join(', ')
      const isHandOver = said.act === 'handOver'
      return isHandOver ? [joined(whole, marks), joined(short, marks)] : [listed(whole, marks), listed(short, marks)]
    },
    allergyShort: 'ALERGIA',
    marks: marksOnce,
    allergy: ({ allergies }) =>
      allergies.length === 0 ? '' : `ALERGIA: ${allergies.map((one) => ALLERGEN_NAMES.es[one]).join(', ')}`,
  }
}
