import type {
  AmountsWords,
  CounterDayWords,
  CounterRodWords,
  CounterSentences,
  HandWords,
  KeptWords,
  OrdersKeyWords,
} from './counter.ts'
import { joined } from './joined.ts'
import type { Words } from './words.ts'

export function esCounter(words: Words): CounterSentences {
  return {
    rod: rod(words),
    hand: hand(words),
    amounts: AMOUNTS,
    kept: kept(words),
    orders: ORDERS,
    day: day(words),
    title: (clock) => joined('Mostrador', clock),
    takeBack: 'Deshacer',
    nothingDone: 'aquí no se hizo nada aún',
    putAway: 'Quitar aviso',
    more: 'más',
    page: (page, pages) => `${page} de ${pages}`,
    back: 'Volver al estante',
  }
}

function rod({ times }: Words): CounterRodWords {
  return {
    about: 'unos',
    number: (likely, within) => (within === 0 ? String(likely) : `unos ${likely} (± ${within})`),
    goneAbout: (atMs) => `acaba hacia ${times.clock(atMs)}`,
    atPace: (gone, perHour) => `${gone} a este ritmo (${perHour} por hora)`,
    mayRunOut: (fromMs) => `quizá acaba ${times.clock(fromMs)}`,
    mayNotReach: 'quizá acaba antes',
    aboutLeft: (pieces) => (pieces === 0 ? 'quedan pocos' : `quedan unos ${pieces}`),
    between: (gone, fromMs, toMs) =>
      toMs === null
        ? `${gone} (no antes de ${times.clock(fromMs)}, o alcanza)`
        : `${gone} (${times.clock(fromMs)} a ${times.clock(toMs)})`,
    guessed: (gone) => `${gone}, a ojo`,
    noneBetween: (fromMs, toMs) => `sin ${times.clock(fromMs)}–${times.clock(toMs)}`,
    soldOut: (atMs) => joined('agotado', times.clock(atMs)),
    soldOutSince: (atMs) => joined('agotado', times.since(atMs)),
    moreAbout: (pieces, atMs, from) =>
      joined(from === 'planned' ? `${pieces} más previstos` : `${pieces} más hacia las`, times.clock(atMs)),
    mayBeGone: 'quizá agotado',
    lastsToClose: 'alcanza al cierre',
    noMore: 'hoy no hay más',
    none: 'hoy no hay',
    noneYet: 'todavía no hay',
    closed: 'cerrado',
    coming: (pieces, atMs, from) =>
      `${pieces} ${from === 'cooling' ? times.at(atMs) : joined(from === 'planned' ? 'plan' : 'hacia', times.clock(atMs))}`,
    kept: (pieces) => `apartados ${pieces}`,
    dayOld: (pieces) => `de ayer ${pieces}`,
    known: (basis) => {
      if (basis.how === 'nothing') return ''
      if (basis.how === 'baked') return joined('horneado', times.clock(basis.atMs))
      return basis.isNow ? 'contado ahora' : joined('contado', times.clock(basis.atMs))
    },
    forSale: (pieces) => `${pieces} a la venta`,
    spoken: ({ name, likely, within, kept: keptPieces, onTheWay, planned, known }) =>
      [
        `${name}: ${within === 0 ? '' : 'unos '}${likely} a la venta`,
        ...(known === '' ? [] : [known]),
        `${keptPieces} apartados`,
        `${onTheWay} en camino`,
        ...(planned === 0 ? [] : [`${planned} previstos`]),
      ].join(', '),
    rack: 'El estante',
  }
}

function hand({ line }: Words): HandWords {
  return {
    touchARod: 'Toque una varilla y luego cuántos se venden',
    tillSells: 'La caja dice qué se vende: toque una varilla para contar o apartar',
    countsOnly: 'Aquí nadie marca ventas, los recuentos llevan la cuenta: toque una varilla',
    bakingOver: 'Ya no se hornea más: lo que hay es para la tarde',
    inHand: (pieces) => `en mano ${pieces}`,
    kinds: (kinds) => `${kinds} clases`,
    sold: (lines) => `vendido ${line.contents(lines)}`,
    tooSmall: (inHand) => `${inHand} en mano`,
    assorted: (pieces) => `${pieces} surtidos`,
    assortedSold: (pieces, lines) => `vendido ${pieces} surtidos: ${line.contents(lines)}`,
    changeIt: 'Cambiar el surtido',
    noneForSale: 'nada a la venta',
    unnamed: 'Sin decir cuál',
    unnamedDetail: 'no se sabe',
    unnamedHow: 'Vendidos, no se sabe cuáles: ¿cuántos?',
    unnamedSold: (pieces) => `vendido ${pieces}, sin decir cuáles`,
    other: 'Otro',
    count: 'Contar',
    keep: 'Apartar',
    lastOneGone: 'Era el último',
    lastOf: (name) => `Último ${name} vendido`,
    fewer: 'Menos',
    putBack: 'Devolver',
    sell: 'Vendido',
  }
}

const AMOUNTS: AmountsWords = {
  title: {
    other: 'Cuántos',
    keep: 'Cuántos se apartan',
    count: 'Cuántos hay',
    unnamed: 'Cuántos se venden',
  },
  wholeHalfDozens: 'Medias docenas',
  singles: 'y sueltos',
  ringsKey: (rings) => `${rings * 6}: ${rings} ${rings === 1 ? 'media docena' : 'medias docenas'}`,
  singlesKey: (pieces) => `y ${pieces} ${pieces === 1 ? 'suelto' : 'sueltos'}`,
  sixMore: 'media docena más',
  sold: (pieces) => numbered('Vendidos', pieces),
  keep: (pieces) => numbered('Apartar', pieces),
  counted: (pieces) => numbered('Contados', pieces),
  wasted: (pieces) => numbered('A la basura', pieces),
  kitchen: (pieces) => numbered('A la cocina', pieces),
  given: (pieces) => numbered('Regalados', pieces),
  nothingChosen: 'elija cuántos',
}

function numbered(verb: string, pieces: number | null): string {
  return joined(verb, pieces === null ? '' : String(pieces))
}

const ORDERS: OrdersKeyWords = {
  title: 'Pedidos',
  summary: (open, atRisk) =>
    atRisk > 0 ? `${atRisk} en riesgo` : open === 0 ? 'ninguno' : `${open} ${open === 1 ? 'abierto' : 'abiertos'}`,
  slip: 'Comanda',
  slipSummary: (waiting, ready) =>
    ready > 0
      ? `${ready} ${ready === 1 ? 'listo' : 'listos'}`
      : waiting === 0
        ? 'nadie espera'
        : `${waiting === 1 ? 'espera' : 'esperan'} ${waiting}`,
}

function kept({ times, line }: Words): KeptWords {
  return {
    title: 'Apartados',
    summary: (keeps, pieces) =>
      keeps === 0 ? 'nada apartado' : `${keeps} ${keeps === 1 ? 'apartado' : 'apartados'}, ${line.pieces(pieces)}`,
    nothing: 'No hay nada apartado. Toque varillas y luego Apartar.',
    handOver: 'Entregar',
    release: 'Liberar',
    keptAt: (atMs) => `apartado ${times.since(atMs)}`,
  }
}

function day({ times }: Words): CounterDayWords {
  return {
    lastLoad: (atMs) => `última carga ${times.by(atMs)}`,
    lastLoadGone: 'no hay más cargas',
    closedToday: 'hoy cerrado',
    changeover: 'cambio',
    tooLate: (atMs) => `carga de ${times.clock(atMs)}, muy tarde`,
    others: (count) => `+${count}`,
    spoken: 'El día',
    noSetUp: 'Aquí todavía no hay un local. Cargue un archivo de configuración en el escritorio.',
    looking: 'Buscando el local…',
  }
}
