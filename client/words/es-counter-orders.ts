import type { CounterWords } from './counter.ts'
import type { OneOrderWords, OrderListWords, OrdersSentences, TakeWords } from './counter-orders.ts'
import { joined } from './joined.ts'
import { orderWords } from './orders.ts'
import { promiseWords } from './promise.ts'

export function esCounterOrders(words: CounterWords): OrdersSentences {
  return { list: list(words), one: one(words), take: take(words) }
}

function list({ times }: CounterWords): OrderListWords {
  return {
    title: 'Pedidos',
    summary: (orders, atRisk) =>
      atRisk === 0
        ? `${orders} ${orders === 1 ? 'abierto' : 'abiertos'}`
        : `${orders} ${orders === 1 ? 'abierto' : 'abiertos'}, ${atRisk} en riesgo`,
    search: 'Seña o nombre',
    nothing: 'No hay pedidos abiertos. Tome uno con la tecla de abajo.',
    notFound: 'Ningún pedido abierto tiene esa seña o ese nombre.',
    keptOther: 'Apartado sin pedido',
    keptOf: (kept, of) => `apartados ${kept} de ${of}`,
    ready: 'listo',
    madeOf: (made, of) => `hechos ${made} de ${of}`,
    atRisk: 'en riesgo',
    missing: (what) => `faltan ${what}`,
    onDay: (label, atMs) => joined(times.date(label), times.clock(atMs)),
  }
}

function one(words: CounterWords): OneOrderWords {
  const { times, line, names } = words
  const said = orderWords(words)
  const { short } = promiseWords(words)
  return {
    title: (mark) => `Pedido ${mark}`,
    way: (way, runId) => (runId === null ? said.way[way] : `${said.way[way]}, ${names.run(runId)}`),
    keep: (pieces) => `Apartar ${pieces}`,
    keepNothing: 'no hay nada de él',
    allKept: 'todo está apartado',
    handOver: 'Entregar',
    asOrdered: 'como se pidió',
    part: (pieces, of) => `${pieces} de ${of}`,
    missed: 'Nadie vino',
    missedDetail: 'vuelve a la venta',
    change: 'Cambiar',
    cancel: 'Anular',
    nowPaid: 'Ya pagado',
    nowUnpaid: 'Sin pagar',
    back: 'A los pedidos',
    kept: (pieces) => `apartados ${pieces}`,
    there: (pieces) => `hay ${pieces}`,
    missing: (pieces) => `faltan ${pieces}`,
    filledWith: (lines) => line.contents(lines),
    replaceAsk: (missing, instead) => `Faltan: ${short(missing)}. ¿Dar ${line.becomes(instead)} en su lugar?`,
    shortAsk: (missing) => `Faltan: ${short(missing)}. ¿Entregar sin eso?`,
    replaceYes: 'Sí, en su lugar',
    shortYes: 'Entregar sin eso',
    waitNo: 'No, esperar',
    sureMissed: '¿Nadie vino por él? Lo apartado vuelve a la venta.',
    sureCancelled: '¿Anular el pedido? Lo apartado vuelve a la venta.',
    yes: 'Sí',
    no: 'No',
    gone: 'Este pedido ya no está abierto.',
    detailsLater: 'El nombre y la nota llegan con la conexión.',
    isRisk: 'tomado con riesgo',
    taken: (atMs) => `tomado ${times.clock(atMs)}`,
    waiting: 'espera',
    begun: 'empezado',
    made: 'hecho',
  }
}

function take(words: CounterWords): TakeWords {
  const { times } = words
  return {
    title: 'Tomar un pedido',
    changeTitle: (mark) => `Cambiar ${mark}`,
    steps: { what: 'Bagels', made: 'Al momento', when: 'Cuándo', who: 'Para quién' },
    touchVarieties: 'Toque lo que se pide: cada toque suma lo que dice la tecla de abajo.',
    one: 'Uno',
    half: 'Media docena',
    dozen: (pieces) => (pieces === 12 ? 'Docena' : `Docena (${pieces})`),
    fewer: 'Menos',
    sliced: 'Rebanado',
    bagged: 'Embolsado',
    without: 'Sin…',
    notIn: 'no lleva',
    earliest: 'Lo antes posible',
    noEarliest: 'hoy no',
    nextDay: 'Día siguiente',
    split: 'En dos partes',
    splitDetail: (pieces, nowMs, restAtMs) => `${pieces} ${times.at(nowMs)}, el resto ${times.at(restAtMs)}`,
    holds: (when) => `${when}: se puede prometer.`,
    holdsNot: (when) => `${when}: no se puede prometer.`,
    dayBack: 'Día antes',
    dayOn: 'Día después',
    step: (minutes) =>
      `${minutes < 0 ? '−' : '+'}${Math.abs(minutes) % 60 === 0 ? `${Math.abs(minutes) / 60} h` : `${Math.abs(minutes)} min`}`,
    mark: 'Seña con que se llama',
    markHint: 'iniciales o número; vacío: el número siguiente',
    name: 'Nombre',
    phone: 'Teléfono',
    note: 'Nota',
    detailsHint: 'Nombre, teléfono y nota no entran en el registro del día y se borran con el tiempo.',
    take: 'Tomar el pedido',
    takeRisk: 'Tomarlo con riesgo',
    save: 'Guardar el cambio',
    needsPieces: 'toque lo que se pide',
    needsTime: 'elija cuándo',
    needsBagel: (item) => `¿bagel para ${item}?`,
    stop: (stop) => `parada ${stop}`,
  }
}
