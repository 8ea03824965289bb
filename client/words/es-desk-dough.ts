import type { DoughAccountWords, DoughWords, RunningWords, SheetWords, StockWords, WantedWords } from './desk-dough.ts'
import { atClock } from './es-desk-dough-clock.ts'
import { esDays } from './es-desk-dough-days.ts'
import { esLearnt } from './es-desk-dough-learnt.ts'
import { esOrder } from './es-desk-dough-order.ts'
import { esPlan } from './es-desk-dough-plan.ts'
import type { Words } from './words.ts'

export function esDough(words: Words): DoughWords {
  return {
    pages: {
      days: 'Los próximos días',
      day: 'Un día',
      order: 'Orden de amasado',
      sheets: 'Hojas de amasado',
      stock: 'Existencias',
      running: 'En marcha',
      learnt: 'Lo aprendido',
    },
    pagesName: 'Páginas del obrador',
    caution:
      'Relojes y temperaturas son una ayuda, no un dispositivo de seguridad: las amasadoras lastiman, y la masa se juzga con la mano y la vista. Deciden las normas locales y el operador autorizado.',
    waiting: 'Esperando el reloj del local…',
    noFormulas:
      'Todavía no hay fórmulas. Escriba primero de qué está hecha cada masa; después las piezas pedidas se vuelven amasijos, pesos y horas.',
    goSetUp: 'Ir a la configuración',
    unknown: 'desconocido',
    today: 'hoy',
    days: esDays(),
    wanted: WANTED,
    plan: esPlan(words),
    order: esOrder(words),
    sheets: sheets(words),
    stock: stock(),
    running: running(),
    learnt: esLearnt,
    account: ACCOUNT,
  }
}

const pieces = (count: number) => `${count} ${count === 1 ? 'pieza' : 'piezas'}`

const WANTED: WantedWords = {
  title: (date) => `Se quieren para el ${date}`,
  hint: 'Piezas para hervir ese día, de una masa sea lo que sea después, o de una variedad. «12d» son doce docenas. Con Intro y las flechas se sube y se baja.',
  columns: { what: 'masa', lastWeek: 'una semana antes', pieces: 'mostrador', ordered: 'pedidos', sum: 'piezas' },
  field: { pieces: (name) => `${name}, para el mostrador`, ordered: (name) => `${name}, para pedidos` },
  byVariety: 'por variedad',
  fewer: 'menos',
  byVarietyOf: (dough) => `${dough} por variedad`,
  likeLastWeek: (date) => `Como el ${date}`,
  like: 'Como otro día…',
  percent: 'Por ciento de más o de menos para el mostrador',
  raise: 'Sumar',
  clear: 'Vaciar',
  save: (date) => `Guardar para el ${date}`,
  forget: 'Descartar lo escrito',
  unreadable: 'Un campo marcado no es un número entero de piezas.',
  unsaved: (numbers) =>
    `${numbers} ${numbers === 1 ? 'número todavía no está guardado' : 'números todavía no están guardados'}.`,
  saved: 'Todo está guardado.',
  total: 'en total',
}

function sheets({ line }: Words): SheetWords {
  return {
    lead: 'Un amasijo en cada página de papel, con una casilla para cada renglón. Se imprime lo planeado; el agua, según las temperaturas que se conocen ahora.',
    none: (date) => `Todavía no hay amasijos planeados para el ${date}.`,
    print: 'Imprimir las hojas',
    head: (place, all, date) => `Amasijo ${place} de ${all}, para el ${date}`,
    start: (clock) => `Empezar ${atClock(clock)}`,
    startOpen: 'Empezar cuando se pueda',
    columns: { what: 'qué', percent: 'de la harina', weight: 'peso', done: 'pesado' },
    mixIns: 'Añadidos',
    mixInsFrom: (minute) => `Añadidos, desde el minuto ${minute}`,
    total: 'masa',
    water: (degrees, water, ice) => `Agua a ${degrees}: ${water}${ice === null ? '' : ` y ${ice} de hielo`}`,
    waterOpen: 'Temperatura del agua: todavía no se sabe. Lea primero la sala, la harina y el grifo.',
    tooCold: 'Ni todo en hielo baja la masa a lo deseado.',
    tooWarm: 'Ninguna agua que la levadura soporte sube la masa a lo deseado.',
    needsWarm: 'Más caliente que el grifo: mezcle agua caliente.',
    comesTo: (degrees) => `La masa llega a ${degrees}.`,
    wished: (degrees) => `Masa deseada a ${degrees}`,
    temps: {
      room: 'sala',
      flour: 'harina',
      preferment: 'prefermento',
      tap: 'grifo',
      water: 'agua usada',
      dough: 'masa amasada',
    },
    steps: 'Pasos',
    mix: (minutes) => `amasar ${minutes} min`,
    rest: (minutes) => `reposar ${minutes} min`,
    bulk: (span) => `en bloque ${span}`,
    fold: (place, span) => `pliegue ${place} a los ${span}`,
    bulkChill: (span) => `frío en bloque ${span}`,
    gives: 'Da',
    givesLine: (count, dough, weight, trays) =>
      `${pieces(count)} ${dough}${weight === null ? '' : ` de ${weight}`}, ${trays}`,
    contains: (names) => `Contiene ${line.list(names)}.`,
    containsHint: 'Según lo cargado; el contacto en la amasadora y la mesa lo juzga quien está ahí.',
    signed: 'Amasó',
  }
}

function stock(): StockWords {
  return {
    title: 'Ingredientes en existencia',
    hint: 'Lo último contado y lo que llegó desde entonces, menos lo que tomaron amasijos y preparaciones. Un número solo son bolsas donde se compra así; también se lee «12.5 kg» y «2 lb 4 oz».',
    none: 'Todavía no hay ingredientes en la configuración.',
    columns: {
      what: 'ingrediente',
      onHand: 'hay',
      counted: 'último conteo',
      short: 'alcanza para',
      count: 'contar',
      received: 'llegó',
    },
    notCounted: 'nunca',
    bags: (count, rest) => `${count} ${count === 1 ? 'bolsa' : 'bolsas'}${rest === null ? '' : ` y ${rest}`}`,
    bagsUnit: 'bolsas',
    bag: (weight) => `bolsas de ${weight}`,
    shortFor: (weight, date, bags) =>
      `falta para el ${date}: ${weight}${bags === null ? '' : ` (${bags} ${bags === 1 ? 'bolsa' : 'bolsas'})`}`,
    enough: 'todo lo planeado',
    countField: (name) => `${name}: cuánto hay`,
    receivedField: (name) => `${name}: cuánto llegó`,
    saveCount: (lines) => (lines === 0 ? 'Guardar el conteo' : `Guardar el conteo de ${lines}`),
    receive: (name) => `${name}: llegó`,
    receiveIt: 'Sumar',
    unreadable: 'Un campo marcado no es un peso.',
    under: 'Menos que nada: cuéntelo, o cargue lo que llegó.',
  }
}

function running(): RunningWords {
  return {
    clocks: 'Relojes',
    clocksHint:
      'Lo que se amasa, leuda, enfría y madura, lo más urgente primero. El leudado sigue a la sala; el frío, a la cámara y a cuán rápido las piezas toman su frío.',
    noClocks: 'Nada se amasa, leuda, enfría ni madura.',
    build: (name, left) => `${name}, quedan ${left}`,
    ripens: 'madurando',
    drop: 'Se tiró',
    dropOf: (name) => `${name}: se tiró`,
    columns: {
      what: 'qué',
      where: 'dónde',
      since: 'desde',
      earliest: 'lo más pronto',
      latest: 'a más tardar',
      state: 'estado',
    },
    stage: {
      planned: 'planeado',
      mixing: 'en la amasadora',
      rest: 'en reposo',
      bulk: 'en bloque',
      bulkChill: 'frío en bloque',
      bench: 'en la mesa',
      ended: 'terminado',
    },
    status: { early: 'todavía no', ready: 'listo', late: 'pasado de su ventana', none: 'sin ventana' },
    temps: 'Temperaturas',
    tempsHint: 'Lecturas de los últimos dos días. Donde nadie leyó hace poco, se supone lo de la configuración.',
    place: { room: 'Sala', cooler: 'Cámara', flour: 'Harina', tap: 'Grifo' },
    readOn: (degrees, clock) => `se leyó ${degrees} ${atClock(clock)}`,
    assumed: (degrees) => `nunca se leyó; se supone ${degrees}`,
    reckons: (degrees) => `los relojes calculan con ${degrees}`,
    readingOf: (place) => `${place}: lectura nueva`,
    record: 'Anotar',
    chart: (place, lowest, highest) => `${place} en los últimos dos días: de ${lowest} a ${highest}`,
    hoursBack: 'hace 48 h',
    now: 'ahora',
  }
}

const ACCOUNT: DoughAccountWords = {
  title: 'Adónde fue la masa',
  rule: 'amasado = formado + perdido en bol y divisora + echado a perder + sin explicar + queda',
  none: 'No se amasó nada desde el último cierre.',
  head: (formula, count) => `${formula}, ${count} ${count === 1 ? 'amasijo' : 'amasijos'}`,
  columns: {
    formula: 'fórmula',
    mixed: 'amasado',
    shaped: 'formado',
    lost: 'perdido',
    spoilt: 'echado a perder',
    unexplained: 'sin explicar',
    left: 'queda',
  },
}
