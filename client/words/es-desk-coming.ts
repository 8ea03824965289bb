import type { Why } from '../../shared-core/plan/why.ts'
import type { ComingWords, ReasonOf } from './desk-coming.ts'
import { money } from './money.ts'
import type { Words } from './words.ts'

const WEEKDAYS = ['lunes', 'martes', 'miércoles', 'jueves', 'viernes', 'sábado', 'domingo']

export function esComing({ line }: Words): ComingWords {
  return {
    waiting: 'Calculando el día…',
    notYet: 'El pronóstico se está haciendo con las ventas pasadas. Llega en un momento.',
    noContact: 'Sin contacto con el servidor: ahora no se puede aconsejar nada.',
    datesName: 'Días que vienen',
    today: 'hoy',
    unknown: 'desconocido',
    closed: (date) => `Para el ${date} no se aconseja nada: el local no abre, o ya cerró el día.`,
    noDoughs: 'Todavía no hay variedades en la configuración, así que no se puede aconsejar nada.',
    onlyGuesses:
      'Es a ojo: todavía no se conocen ventas. Escriba las piezas de un día normal en la configuración, traiga ventas pasadas, o siga tocando: en dos semanas los números son los del local.',
    unknownOf: (doughs) =>
      `De ${line.list(doughs)} todavía no se sabe nada y no se aconseja nada: ni ventas ni una suposición escrita. Escriba las piezas de un día normal, traiga ventas pasadas o siga tocando: el primer día ya enseña.`,
    toUsual: 'Escribir un día normal',
    decideBy: (names, day, clock) => `Decidir ${line.list(names)} antes de: ${clock}, ${day}.`,
    decideLate: 'Esa hora ya pasó.',
    dough: {
      title: (date) => `Masa para el ${date}`,
      hint: 'Todas las variedades de una masa juntas, porque se eligen en la olla. Lo que sobra se guarda en frío, lo que falta son ventas perdidas.',
    },
    bake: {
      title: (date) => `Para hornear el ${date}`,
      hint: 'Por variedad, se decide el mismo día. Lo que sobra se vende al otro día, y poco.',
      expects: (left, lost) => `Quedan unas ${left} al cierre, y ${lost} se piden en vano.`,
    },
    columns: {
      dough: 'masa',
      variety: 'variedad',
      likely: 'probable',
      careful: 'prudente',
      plenty: 'de sobra',
      advised: 'aconsejado',
      yours: 'lo suyo',
      orders: 'pedidos',
      there: 'ya hay',
      toMake: 'para hacer',
      bake: 'para hornear',
    },
    ordered: (board, typed) => `${board} en el tablero, ${typed} aparte`,
    toOrders: 'Los pedidos de ese día',
    legend:
      'Probable alcanza en un día de cada dos, prudente en ocho de diez, de sobra en nueve de diez. Todo es para el mostrador; los pedidos van aparte.',
    basis: {
      nothing: 'todavía no se sabe nada',
      guess: 'a ojo, sin ventas todavía',
      few: 'de pocos días de ventas',
      many: 'de muchos días de ventas',
    },
    why: 'Por qué',
    hideWhy: 'Ocultar',
    whyOf: (name) => `Por qué tantas de ${name}`,
    reason: (why, of) => reason(why, of, line.list),
    sum: (pieces, what) => `= ${pieces} ${what === 'toMake' ? 'para hacer, como se aconseja' : 'para hornear'}`,
    signed: (pieces) => (pieces < 0 ? `−${-pieces}` : `+${pieces}`),
    yoursOf: (dough) => `${dough}: piezas para el mostrador`,
    unreadable: 'Un campo marcado no es un número de piezas.',
    take: (date) => `Adoptar para el ${date}`,
    takeAndPlan: 'Adoptar y planear los amasijos',
    toMixes: 'A sus amasijos',
    asAdvised: 'Todo como se aconseja',
    differs: (count) => `${count} ${count === 1 ? 'número difiere' : 'números difieren'} del consejo.`,
    stands: 'Esto es lo que se quiere para ese día.',
    notTaken: 'Todavía no se quiere nada para ese día.',
    changedBefore: 'Cuánto acertaron sus cifras anteriores',
  }
}

function reason(why: Why, { weekday, named, unit }: ReasonOf, list: (names: readonly string[]) => string): string {
  switch (why.code) {
    case 'usual':
      return 'día normal'
    case 'weekday':
      return `${WEEKDAYS[weekday - 1]}: × ${why.factor.toFixed(2)}`
    case 'special':
      return `${named.length === 0 ? 'lo especial del día' : list(named)}: × ${why.factor.toFixed(2)}`
    case 'sure':
      return sure(why)
    case 'orders':
      return 'pedidos'
    case 'carried':
      return 'en frío o amasadas, y buenas todavía ese día'
    case 'unit':
      return unit === 'tray' ? `en bandejas enteras de ${why.unit}` : `en tablas enteras de ${why.unit}`
    case 'rest':
      return 'se piden todavía hoy'
    case 'there':
      return 'ya hay'
    case 'onTheWay':
      return 'en camino'
    case 'dough':
      return 'no hay más masa'
  }
}

function sure({ underCents, overCents, coveredPercent, isAssumed }: Extract<Why, { code: 'sure' }>): string {
  const costs = `una de menos cuesta ${money(underCents)}, una de más ${money(Math.max(0, overCents))}`
  const assumed = isAssumed ? ' (un precio o costo no se conoce y se supone)' : ''
  return `${costs}${assumed}: alcanza en ${coveredPercent} de 100 días así`
}
