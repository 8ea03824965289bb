import type { DaysWords } from './desk-dough-days.ts'
import { atClock, ofClock } from './es-desk-dough-clock.ts'

const mixes = (count: number) => `${count} ${count === 1 ? 'amasijo' : 'amasijos'}`

export function esDays(): DaysWords {
  return {
    title: 'Las próximas dos semanas',
    hint: 'Por día de hervido. Los feriados se pueden escribir con mucha anticipación; cada masa tiene su hora para decidirla.',
    goTo: 'Cualquier día posterior',
    go: 'Ir',
    columns: {
      day: 'día',
      wanted: 'se quieren',
      mixes: 'amasijos para ese día',
      mixing: 'se amasa ese día',
      decide: 'decidir ese día',
      cooler: 'cámara esa noche',
    },
    closed: 'cerrado',
    wanted: (pieces, ordered) => (ordered === 0 ? `${pieces}` : `${pieces}, de ellas ${ordered} pedidas`),
    stands: (planned, begun) =>
      [
        planned > 0 ? `${planned} ${planned === 1 ? 'planeado' : 'planeados'}` : '',
        begun > 0 ? `${begun} en marcha` : '',
      ]
        .filter((part) => part !== '')
        .join(', '),
    asks: (count) => `el plan pide ${mixes(count)}`,
    mixing: (count) => (count === 0 ? '' : mixes(count)),
    decide: (formula, clock, bakeDate) => `${formula} antes ${ofClock(clock)} para el ${bakeDate}`,
    decided: 'decidido',
    late: 'tarde',
    trays: (trays, space) => (space === null ? `${trays} bandejas` : `${trays} de ${space} bandejas`),
    tooMany: (trays) => `sobran ${trays}`,
    next: 'Lo próximo por decidir',
    decideNext: (formula, clock, day, bakeDate) =>
      `Decidir ${formula} antes ${ofClock(clock)}, ${day}, para el ${bakeDate}.`,
    nothingToDecide: 'No hay nada por decidir.',
    preparations: 'Prefermentos, remojos y alimentación',
    preparationsHint:
      'Para los amasijos de hoy, mañana y pasado mañana; una masa madre se alimenta también en días cerrados.',
    noPreparations: 'No hay nada que preparar.',
    feed: 'Alimentar',
    make: (weight, seed) => `${weight}${seed === null ? '' : ` y ${seed} de la madura`}`,
    forDay: (date) => `para el ${date}`,
    begin: (earliest, target, latest) =>
      `empezar ${atClock(target)}, no antes ${ofClock(earliest)}, a más tardar ${atClock(latest)}`,
    status: { coming: 'por venir', due: 'ya', late: 'tarde' },
    made: 'Empezado',
    madeOf: (name) => `${name}: empezado ahora`,
    short: 'Lo que falta en los próximos días',
    nothingCounted: 'Todavía no se contó nada: no se sabe qué faltará.',
    noShort: 'Lo contado alcanza para todo lo planeado y lo que se quiere. Lo que nadie contó no se mira.',
    shortLine: (name, date, weight, bags) =>
      `${name}: falta para el ${date}, ${weight}${bags === null ? '' : ` (${bags} ${bags === 1 ? 'bolsa' : 'bolsas'})`}`,
    toStock: 'Contar o cargar lo que llegó',
  }
}
