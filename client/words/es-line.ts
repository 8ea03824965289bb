import type { BatchStage } from '../../shared-core/shop/shop.ts'
import type { LineWords, Speech } from './words.ts'

const STAGES: { readonly [stage in BatchStage]: readonly [title: string, inSentence: string] } = {
  proof: ['Leudando', 'leudando'],
  chill: ['En frío', 'en frío'],
  rack: ['En el carro', 'en el carro'],
  kettle: ['En la olla', 'en la olla'],
  boards: ['En tablas', 'en tablas'],
  oven: ['En el horno', 'en el horno'],
}

export function esLine({ names }: Speech): LineWords {
  return {
    stage: (stage) => STAGES[stage][1],
    stageTitle: (stage) => STAGES[stage][0],
    phase: (phase) => (phase === 'first-side' ? 'primer lado' : 'segundo lado'),
    contents: (lines) => lines.map(({ varietyId, pieces }) => `${names.variety(varietyId)} ${pieces}`).join(', '),
    becomes: (lines) => list(lines.map(({ varietyId, pieces }) => `${pieces} ${names.variety(varietyId)}`)),
    pieces: (pieces) => `${pieces} ${pieces === 1 ? 'pieza' : 'piezas'}`,
    trays: (trays) => `${trays} ${trays === 1 ? 'bandeja' : 'bandejas'}`,
    boards: (boards) => `${boards} ${boards === 1 ? 'tabla' : 'tablas'}`,
    shelf: (shelfId) => shelfText(names.shelf(shelfId)),
    list,
    cooling: 'Enfriando',
    forSale: 'A la venta',
    kept: 'Apartados',
    onTheWay: 'En camino',
  }
}

/** "y" turns to "e" before the sound of an i. */
function list(items: readonly string[]): string {
  const last = items[items.length - 1] ?? ''
  if (items.length < 2) return last
  return `${items.slice(0, -1).join(', ')} ${/^h?i(?![ae])/i.test(last) ? 'e' : 'y'} ${last}`
}

/** A name that says nothing alone, like "2", is called a shelf; "Refractario" is not. */
function shelfText(name: string): string {
  return /^\d|^..?$/.test(name) ? `piso ${name}` : name
}
