import type { OrderWords } from './desk-dough-order.ts'
import { atClock } from './es-desk-dough-clock.ts'
import type { Words } from './words.ts'

export function esOrder({ line, times }: Words): OrderWords {
  return {
    lead: 'Los alérgenos van al final, después se lava la amasadora lo menos posible, después todo llega a tiempo a la cámara. Mueva un amasijo y vea cuánto cuesta otro orden.',
    none: 'No hay amasijos planeados. Planee primero un día; sus amasijos aparecen aquí en orden.',
    title: (date) => `Se amasa el ${date}`,
    exact: 'Ningún orden cuesta menos.',
    bestFound: 'El mejor orden encontrado; con tantos amasijos no se pueden probar todos.',
    cost: (contacts, washes, lateMs) =>
      [...costs(contacts, washes), lateMs < MINUTE_MS ? 'nada tarde' : `${times.span(lateMs)} tarde en total`].join(
        ', ',
      ),
    more: (contacts, washes, lateMs) =>
      `Frente al mejor orden: ${[signed(contacts, 'contacto de alérgenos', 'contactos de alérgenos'), signed(washes, 'lavado', 'lavados'), Math.abs(lateMs) < MINUTE_MS ? '' : `${lateMs > 0 ? '+' : '−'}${times.span(Math.abs(lateMs))} tarde`].filter((part) => part !== '').join(', ')}.`,
    earlierFormula:
      'Un amasijo está planeado con una fórmula que cambió después; planee su día de nuevo para pesar con la de ahora.',
    isBest: 'Este es el mejor orden.',
    isBestByHand: 'No cuesta más que el mejor orden.',
    saved: 'Este orden y sus horas están guardados.',
    notSaved: 'Este orden todavía no está guardado.',
    noTimes: 'Sus horas todavía no están guardadas.',
    takeBest: 'Tomar el mejor orden',
    save: 'Guardar: empezar cuanto antes',
    saveLatest: 'Guardar: empezar lo más tarde posible',
    asItWas: 'Como estaba',
    earlier: (name) => `${name}: antes`,
    later: (name) => `${name}: después`,
    drag: 'Arrastrar a otro lugar',
    mix: (place, formula, date) => `${place}. ${formula} para el ${date}`,
    start: (clock) => `empezar ${atClock(clock)}`,
    startLatest: (clock) => `a más tardar ${atClock(clock)}`,
    coolerAt: (clock) => `en la cámara ${atClock(clock)}`,
    reason: {
      bringsLater: (allergens) => `es el primero con ${line.list(allergens)}: lo que no tiene va antes`,
      stronger: 'es de sabor más fuerte que todo lo anterior',
      sameBowl: 'va después del anterior sin lavado',
      soonest: 'es el que antes debe empezar de los que faltan',
      wash: (allergens) =>
        allergens.length === 0
          ? 'lavar la amasadora antes: es más suave'
          : `lavar la amasadora antes: tuvo ${line.list(allergens)}`,
      contact: (allergens) => `viene después de ${line.list(allergens)}, que no contiene`,
      waits: (span) => `la amasadora lo espera ${span}`,
      benchWaits: (span) => `espera ${span} la mesa o lugar para leudar`,
      late: (span) => `${span} tarde en la cámara`,
    },
    contains: (allergens) => `contiene ${line.list(allergens)}`,
    legend: {
      wash: 'lavado',
      mix: 'amasadora',
      wait: 'reposo y bloque',
      bench: 'dividir y formar',
      proof: 'leudado',
      due: 'hora de la cámara',
    },
  }
}

const MINUTE_MS = 60_000

function costs(contacts: number, washes: number): string[] {
  return [
    contacts === 0
      ? 'ningún contacto de alérgenos'
      : `${contacts} ${contacts === 1 ? 'contacto' : 'contactos'} de alérgenos`,
    washes === 0 ? 'ningún lavado' : `${washes} ${washes === 1 ? 'lavado' : 'lavados'}`,
  ]
}

function signed(count: number, one: string, many: string): string {
  if (count === 0) return ''
  return `${count > 0 ? '+' : '−'}${Math.abs(count)} ${Math.abs(count) === 1 ? one : many}`
}
