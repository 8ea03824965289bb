import { ALLERGEN_NAMES } from './allergens.ts'
import { joined, listed } from './joined.ts'
import type { KitchenActWords, SaidKitchenAct } from './kitchen-acts.ts'
import { marksOnce } from './kitchen-acts.ts'
import type { Words } from './words.ts'

export function enKitchenActs({ names, line }: Words): KitchenActWords {
  const what = ({ items }: SaidKitchenAct) =>
    line.list(
      items.map(({ itemId, varietyId, count }) =>
        joined(
          count === 1 ? '' : String(count),
          names.menuItem(itemId),
          varietyId === null ? '' : `on ${names.variety(varietyId)}`,
        ),
      ),
    )
  const shelf = ({ shelfId }: SaidKitchenAct) => (shelfId === null ? 'the oven' : names.shelf(shelfId))
  const act = (said: SaidKitchenAct): readonly [string, string] => {
    switch (said.act) {
      case 'make':
        return [`make ${what(said)}`, 'make']
      case 'made':
        return [`finish ${what(said)}`, 'finish']
      case 'in':
        return [`${what(said)} into ${shelf(said)}`, `into ${shelf(said)}`]
      case 'turn':
        return [`turn ${what(said)} in ${shelf(said)}`, `turn ${shelf(said)}`]
      case 'move':
        return [`move ${what(said)} in ${shelf(said)}`, `move ${shelf(said)}`]
      case 'out':
        return [`${what(said)} out of ${shelf(said)}`, `out of ${shelf(said)}`]
      case 'handOver':
        return ['hand over', 'hand over']
      case 'pull': {
        const portion = said.portionId === null ? '' : names.portion(said.portionId)
        const pull = joined('pull', said.trays === null ? '' : line.trays(said.trays), portion)
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
    allergyShort: 'ALLERGY',
    marks: marksOnce,
    allergy: ({ allergies }) =>
      allergies.length === 0 ? '' : `ALLERGY: ${allergies.map((one) => ALLERGEN_NAMES.en[one]).join(', ')}`,
  }
}
