import type { BatchStage } from '../../shared-core/shop/shop.ts'
import type { LineWords, Speech } from './words.ts'

const STAGES: { readonly [stage in BatchStage]: readonly [title: string, inSentence: string] } = {
  proof: ['Proofing', 'proofing'],
  chill: ['Chilled', 'chilled'],
  rack: ['On the rack', 'on the rack'],
  kettle: ['In the kettle', 'in the kettle'],
  boards: ['On boards', 'on boards'],
  oven: ['In the oven', 'in the oven'],
}

export function enLine({ names }: Speech): LineWords {
  return {
    stage: (stage) => STAGES[stage][1],
    stageTitle: (stage) => STAGES[stage][0],
    phase: (phase) => (phase === 'first-side' ? 'first side' : 'second side'),
    contents: (lines) => lines.map(({ varietyId, pieces }) => `${names.variety(varietyId)} ${pieces}`).join(', '),
    becomes: (lines) => list(lines.map(({ varietyId, pieces }) => `${pieces} ${names.variety(varietyId)}`)),
    pieces: (pieces) => `${pieces} ${pieces === 1 ? 'piece' : 'pieces'}`,
    trays: (trays) => `${trays} ${trays === 1 ? 'tray' : 'trays'}`,
    boards: (boards) => `${boards} ${boards === 1 ? 'board' : 'boards'}`,
    shelf: (shelfId) => shelfText(names.shelf(shelfId)),
    list,
    cooling: 'Cooling',
    forSale: 'For sale',
    kept: 'Kept',
    onTheWay: 'On the way',
  }
}

function list(items: readonly string[]): string {
  return items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} and ${items[items.length - 1]}`
}

/** A name that says nothing alone, like "2", is called a shelf; "Hearth" is not. */
function shelfText(name: string): string {
  return /^\d|^..?$/.test(name) ? `shelf ${name}` : name
}
