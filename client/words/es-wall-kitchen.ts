import { listed } from './joined.ts'
import type { OwnWallKitchenWords } from './wall-kitchen.ts'
import type { Words } from './words.ts'

export function esWallKitchen({ times }: Words): OwnWallKitchenWords {
  return {
    toMake: (count) => `Por preparar: ${count}`,
    ready: (marks) => `listos: ${marks.join(', ')}`,
    now: 'ahora',
    oven: 'Horno',
    ovenEmpty: 'No hay nada en el horno',
    placesFree: (places) =>
      places === 0 ? 'sin lugar libre' : places === 1 ? '1 lugar libre' : `${places} lugares libres`,
    otherKinds: (count) => (count === 1 ? '1 clase más' : `${count} clases más`),
    risk: ({ mark, dueAtMs, missing, save }) => listed(`A ${mark}, ${times.at(dueAtMs)}, le faltan ${missing}`, save),
    moreRisks: (count) => (count === 1 ? '1 pedido más' : `${count} pedidos más`),
    next: ({ mark, dueAtMs, kept, pieces }) => `${mark} ${times.clock(dueAtMs)}: ${kept} de ${pieces} guardadas`,
  }
}
