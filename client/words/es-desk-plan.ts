import type { Bottleneck, ContactPlace, PlanCannot, PlanLimit, PlanWhy } from '../../shared-core/live/plan.ts'
import type { DeskWords } from './desk.ts'
import type { BakePlanWords, Cost, HeadWords, PictureWords } from './desk-plan.ts'
import { esWhatIf } from './es-desk-plan-what-if.ts'
import { esWishes } from './es-desk-plan-wishes.ts'
import { money } from './money.ts'

export function esBakePlan(words: DeskWords): BakePlanWords {
  const { times, line, names } = words
  return {
    money,
    waiting: 'Planeando las cargas…',
    notYet: 'El plan se está haciendo con las ventas pasadas. Llega en un momento.',
    noContact: 'Sin contacto con el servidor: ahora no se puede planear nada.',
    datesName: 'Días por planear',
    today: 'hoy',
    whatIfPage: 'Qué pasaría',
    closed: (date) => `Para el ${date} no se planea nada: el local no abre, o ya cerró el día.`,
    nothingKnown:
      'Todavía no se sabe nada de lo que se va a pedir, así que no se aconsejan cargas. Escriba las piezas de un día normal, traiga ventas pasadas o siga tocando: el primer día ya enseña.',
    toUsual: 'Escribir un día normal',
    nothingMore: 'Ese día ya no se hornea nada más.',
    wantedDough: (pieces) =>
      `El plan cuenta con la masa que se quiere para ese día, ${pieces} piezas, esté ya en frío o no.`,
    openDough: 'Todavía nadie dijo cuánta masa lleva ese día: el plan toma tanta como valga la pena hornear.',
    advice: {
      title: 'Consejo',
      on: 'Las cargas se aconsejan en todas las pantallas. Lo que la gente carga, fija o deja fuera va primero: el plan lo sigue.',
      off: 'El consejo está apagado: las pantallas muestran solo las cargas que se escribieron. Lo demás no cambia.',
      turnOn: 'Aconsejar cargas',
      turnOff: 'Apagar el consejo',
    },
    head: head(words),
    picture: picture(words),
    table: {
      title: 'Todas las cargas, y por qué',
      hint: 'Las cargas aconsejadas cambian cuando el día se aparta del plan; lo que ya empezó no se mueve.',
      kettle: 'primera tanda',
      shelf: 'piso',
      in: 'entra',
      flip: 'vuelta',
      out: 'sale',
      contents: 'qué y por qué',
      state: '',
      advised: 'aconsejada',
      pinned: 'fijada',
      last: 'la última de su piso',
    },
    why: (why) => `${names.variety(why.varietyId)}: ${reason(why, words)}`,
    contact: ({ varietyId, allergens, where }) =>
      `${names.variety(varietyId)} viene después de ${line.list(allergens.map((one) => words.desk.today.kettle.allergen[one]))}: ${line.list(where.map((one) => PLACES[one]))}. Lavar o cambiar antes, o decirlo a quien compra.`,
    cannot: (cannot, loadOf) => cannotText(cannot, loadOf, words),
    load: (shelf, inAtMs) => `${shelf} ${times.at(inAtMs)}`,
    ...esWishes(words),
    supply: {
      title: 'Lo que hay y lo que se pide',
      hint: 'Piezas hasta cada hora: lo que hay en escalones, lo que se pide como línea, dentro de la franja en ocho de diez días así.',
      choose: 'Variedad',
      theFew: 'las que más importan',
      spoken: (name, left, lost) => `${name}: quedan ${left} al cierre, ${lost} se piden en vano.`,
      expects: (left, lost) => `quedan unas ${left}, ${lost} en vano`,
      supply: 'lo que hubo hasta ahí',
      asked: 'lo que se pidió hasta ahí',
      band: 'en ocho de diez días',
    },
    whatIf: esWhatIf(words),
  }
}

const PLACES: { readonly [place in ContactPlace]: string } = {
  kettle: 'en el agua',
  boards: 'en las tablas',
  trays: 'en las bandejas de semillas',
  peel: 'en la pala',
  stone: 'en la piedra',
}

const LIMITS: { readonly [limit in PlanLimit]: string } = {
  kettle: 'la olla hierve hasta entonces',
  boards: 'alcanzan las tablas',
  shelf: 'cabe en el piso',
  oven: 'alcanza el tiempo del horno',
  dough: 'alcanza la masa',
  hands: 'alcanzan las manos',
}

function cannotText(cannot: PlanCannot, loadOf: (id: string) => string, { times, line, names }: DeskWords): string {
  switch (cannot.kind) {
    case 'order-short':
      return `Al pedido para ${times.clock(cannot.dueAtMs)} le van a faltar ${line.pieces(cannot.pieces)} de ${names.variety(cannot.varietyId)}.`
    case 'pinned-over':
      return `Lo fijado para ${loadOf(cannot.loadId)} es más de lo que ${LIMITS[cannot.limit]}.`
    case 'show-short':
      return `${names.variety(cannot.varietyId)}: ${line.pieces(cannot.pieces)} menos a la vista de lo que se quiere.`
    case 'dough-short':
      return `${names.dough(cannot.doughId)}: falta masa para ${line.pieces(cannot.pieces)}.`
    case 'no-time':
      return 'Ninguna carga puede entrar y salir antes de que el horno deba estar vacío.'
  }
}

function reason(why: PlanWhy, { times, line }: DeskWords): string {
  switch (why.kind) {
    case 'runsOut':
      return why.kettleByMs === null
        ? `si no, se acaba cerca de ${times.clock(why.atMs)}`
        : `si no, se acaba cerca de ${times.clock(why.atMs)}; llega si está en la olla ${times.by(why.kettleByMs)}`
    case 'opening':
      return 'para la apertura'
    case 'order':
      return `para el pedido de ${times.clock(why.dueAtMs)}, ${line.pieces(why.pieces)}`
    case 'afternoon':
      return `alcanza hasta el cierre (${times.clock(why.untilMs)}), porque después del cambio ya no se hornea`
    case 'fresh':
      return 'más fresca que con más en una carga anterior'
    case 'show':
      return `para que haya ${why.least} a la vista`
    case 'room':
      return 'ahora, porque después la olla y los pisos están llenos'
    case 'pinned':
      return 'fijada por la gente'
  }
}

function head({ times }: DeskWords): HeadWords {
  return {
    title: (date) => `El plan para el ${date}`,
    baked: (pieces, loads) => `${pieces} piezas en ${loads} ${loads === 1 ? 'carga' : 'cargas'}`,
    firstDip: (atMs) => times.clock(atMs),
    noKettle: 'no hay más que hervir',
    lastOut: (atMs) => times.clock(atMs),
    profit: 'según el pronóstico',
    more: (cents) => `${cents < 0 ? '−' : '+'}${money(Math.abs(cents))}`,
    moreUnknown: 'no se sabe',
    howTitle: 'Cómo se calcula',
    how: (profitCents, wavesCents) =>
      `Precio de lo que probablemente se vende, menos costo, clientes que se van sin nada y el rato en espera: ${money(profitCents)}, esperado según el pronóstico, sin promesa.${
        wavesCents === null
          ? ''
          : ` La misma cuenta con hornadas iguales cada 90 minutos, como se hornea por costumbre, da ${money(wavesCents)}.`
      }`,
    left: (pieces) => `${pieces} quedan al cierre`,
    lost: (pieces) => `${pieces} se piden en vano`,
    missing: (pieces) => `${pieces} faltan en pedidos`,
    age: (minutes) => `${minutes} min de edad al venderse`,
    crew: (minutes) => times.span(minutes * 60_000),
    bottleneck: (of, gainCents) => `Lo más justo: ${BOTTLENECKS[of]}; con un poco más se ganarían ${money(gainCents)}.`,
    noBottleneck: 'Lo más justo: nada; con más de algo se ganaría poco.',
    labels: {
      bake: 'Para hornear',
      firstDip: 'Primera tanda',
      lastOut: 'Última salida',
      profit: 'Esperado',
      waves: 'Sobre hornadas iguales de 90 min',
      risk: 'Probablemente',
      crew: 'Horas del equipo',
    },
  }
}

const BOTTLENECKS: { readonly [of in Bottleneck]: string } = {
  kettle: 'la olla',
  boards: 'las tablas',
  shelves: 'los pisos',
  dough: 'la masa',
  people: 'la gente',
}

function picture({ times }: DeskWords): PictureWords {
  return {
    title: 'La línea a lo largo del día',
    hint: 'Toque una carga para ver por qué está. Arrástrela, o mueva la elegida con las flechas: se queda donde la puso, y lo que eso cuesta se dice antes de guardarlo.',
    kettle: 'Olla',
    boards: 'Tablas',
    boardsOf: (most, count) => `${most} de ${count}`,
    opening: 'apertura',
    changeover: 'cambio',
    lastLoad: 'última carga',
    ruler: 'Las horas del día',
    closer: 'Más cerca',
    whole: 'Día entero',
    spoken: (loads, fromMs, toMs) => `${loads} cargas, de ${times.clock(fromMs)} a ${times.clock(toMs)}`,
    loadName: (shelf, inAtMs, contents, isPinned) =>
      `${shelf} ${times.at(inAtMs)}: ${contents}${isPinned ? ', fijada' : ''}`,
    key: {
      advised: 'aconsejada',
      pinned: 'fijada',
      running: 'en el horno',
      firstSide: 'primer lado',
      cooling: 'enfriando',
      contact: 'contacto con alérgeno',
      forbidden: 'libre',
    },
  }
}

/** What a change does, in money and pieces. @example "Cuesta 3.40, según el pronóstico; 2 más se piden en vano." */
export function costText({ profitCents, lost, missing, left }: Cost): string {
  const pieces = [more(lost, 'se piden en vano'), more(missing, 'faltan en pedidos'), more(left, 'quedan')]
  const said = pieces.filter((part) => part !== '')
  const cents =
    Math.abs(profitCents) < 1
      ? 'Da el mismo dinero'
      : `${profitCents < 0 ? 'Cuesta' : 'Gana'} ${money(Math.abs(profitCents))}, según el pronóstico`
  return `${cents}; ${said.length === 0 ? 'no cambian las piezas que faltan o sobran' : said.join(', ')}.`
}

function more(by: number, what: string): string {
  const pieces = Math.round(Math.abs(by) * 10) / 10
  return pieces === 0 ? '' : `${pieces} ${by > 0 ? 'más' : 'menos'} ${what}`
}
