import type { CounterWords } from './counter.ts'
import type { SlipWords } from './counter-slip-orders.ts'

export function esSlipOrders({ times, line }: CounterWords): SlipWords {
  const range = (medianMs: number, carefulMs: number) => `unos ${minutes(medianMs)}, hasta ${minutes(carefulMs)} min`
  return {
    title: 'Comanda',
    touchThings: 'Toque lo que se prepara; otra vez para dos.',
    number: (mark) => `N.º ${mark}`,
    otherNumber: 'otro número',
    typeNumber: 'El número de la comanda',
    erase: 'Borrar',
    useNumber: 'Usarlo',
    nextNumber: 'El siguiente',
    start: (mark) => `Empezar ${mark}`,
    nothingYet: 'aún no se tocó nada',
    wait: range,
    notMade: {
      noSuchItem: 'no está en la carta',
      notNow: 'fuera de uso',
      changeover: 'después del cambio',
      ovenCloses: 'tarde para el horno',
      closed: 'tarde para hoy',
      noPortions: 'no queda',
      noBagels: 'no quedan bagels',
      noPlace: 'no hay dónde hacerlo',
      queueGrows: 'más de lo que se puede: más de una hora',
    },
    promised: (ms) => `más que los ${times.span(ms)} que decimos`,
    bagel: 'Bagel',
    toasted: 'Tostado',
    fillings: 'Con, sin',
    allergy: 'Alergia',
    less: 'Uno menos',
    nextLine: 'Otra línea',
    another: 'Otro igual',
    leftOut: 'sin',
    moreOf: 'más',
    left: (portions) => `quedan ${portions}`,
    portions: 'Porciones que quedan',
    handOver: (mark) => `Entregar ${mark}`,
    readySince: (atMs) => `listo ${times.since(atMs)}`,
    nobodyWaits: 'Nadie espera',
    spokenQueue: (marks) => (marks.length === 0 ? 'Nadie espera' : `Esperan: ${line.list(marks)}`),
    moreReady: (count) => `+${count} ${count === 1 ? 'listo' : 'listos'}`,
  }
}

/** A wait is told in whole minutes, rounded up. */
function minutes(ms: number): number {
  return Math.max(1, Math.ceil(ms / 60_000))
}
