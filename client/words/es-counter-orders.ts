import type { Short } from '../../shared-core/day/events.ts'
import type { RiskSave } from '../../shared-core/orders/at-risk.ts'
import type { CounterWords } from './counter.ts'
import type { OneOrderWords, OrderListWords, OrdersSentences, TakeWords } from './counter-orders.ts'
import { joined } from './joined.ts'
import { orderWords } from './orders.ts'

export function esCounterOrders(words: CounterWords): OrdersSentences {
  return { list: list(words), one: one(words), take: take(words) }
}

function list(words: CounterWords): OrderListWords {
  const { times } = words
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
    onDay: (label, atMs) => joined(times.date(label), times.clock(atMs)),
    short: (missing) => `faltan ${shortText(words, missing)}`,
    save: (save) => saveText(words, save),
  }
}

function shortText({ names, line }: CounterWords, missing: readonly Short[]): string {
  return line.list(
    missing.map(({ varietyId, pieces }) => `${pieces} ${varietyId === null ? 'surtidos' : names.variety(varietyId)}`),
  )
}

function saveText({ line, times }: CounterWords, save: RiskSave): string {
  switch (save.code) {
    case 'keepNow':
      return `apartar ya ${line.becomes(save.lines)}`
    case 'earlierLoad':
      return `${line.shelf(save.shelfId)}: fuera ${times.by(save.readyByMs)}, no ${times.at(save.readyAtMs)}`
    case 'otherLoad':
      return `en la próxima hornada de ${line.shelf(save.shelfId)}: ${line.becomes(save.lines)}`
    case 'otherVariety':
      return `preguntar si vale ${line.becomes(save.lines)}`
    case 'split':
      return `dar el resto ${times.at(save.restAtMs)}`
    case 'later':
      return `todo ${times.at(save.atMs)}`
  }
}

function one(words: CounterWords): OneOrderWords {
  const { times, line, names } = words
  const said = orderWords(words)
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
    replaceAsk: (missing, instead) =>
      `Faltan: ${shortText(words, missing)}. ¿Dar ${line.becomes(instead)} en su lugar?`,
    shortAsk: (missing) => `Faltan: ${shortText(words, missing)}. ¿Entregar sin eso?`,
    replaceYes: 'Sí, en su lugar',
    shortYes: 'Entregar sin eso',
    waitNo: 'No, esperar',
    sureMissed: '¿Nadie vino por él? Lo apartado vuelve a la venta.',
    sureCancelled: '¿Anular el pedido? Lo apartado vuelve a la venta.',
    yes: 'Sí',
    no: 'No',
    gone: 'Este pedido ya no está abierto.',
    detailsLater: 'El nombre y la nota llegan con la conexión.',
    nobodySaid: 'Sin nombre.',
    isRisk: 'tomado con riesgo',
    coolFirst: (atMs) => `frío para rebanar o embolsar ${times.at(atMs)}`,
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
    nextDay: 'Mañana',
    split: 'En dos partes',
    splitDetail: (pieces, nowMs, restAtMs) => `${pieces} ${times.at(nowMs)}, el resto ${times.at(restAtMs)}`,
    holds: (when) => `${when}: se puede prometer.`,
    holdsNot: (when) => `${when}: no se puede prometer.`,
    today: 'Hoy',
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
    needsMark: 'falta la seña',
    needsBagel: (item) => `¿bagel para ${item}?`,
    stop: (stop) => `parada ${stop}`,
    shelf: (shelfId) => words.line.shelf(shelfId),
  }
}
