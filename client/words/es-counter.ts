import type {
  AmountsWords,
  CounterDayWords,
  CounterRodWords,
  CounterSentences,
  HandWords,
  KeptWords,
} from './counter.ts'
import { joined } from './joined.ts'
import type { Words } from './words.ts'

export function esCounter(words: Words): CounterSentences {
  return {
    rod: rod(words),
    hand: hand(words),
    amounts: AMOUNTS,
    kept: kept(words),
    day: day(words),
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
    goneAbout: (atMs) => `acaba hacia ${times.clock(atMs)}`,
    atPace: (gone, perHour) => `${gone} a este ritmo (${perHour} por hora)`,
    noneBetween: (fromMs, toMs) => `sin ${times.clock(fromMs)}–${times.clock(toMs)}`,
    goneSince: (atMs) => `agotado ${times.clock(atMs)}`,
    lastsToClose: 'alcanza al cierre',
    noMore: 'hoy no hay más',
    none: 'hoy no hay',
    coming: (pieces, atMs) => `${pieces} ${times.at(atMs)}`,
    kept: (pieces) => `apartados ${pieces}`,
    known: (basis) => {
      if (basis.how === 'nothing') return ''
      const known = joined(KNOWN[basis.how], times.clock(basis.atMs))
      return basis.how === 'counted' && basis.lessSales ? `${known}, menos ventas` : known
    },
    forSale: (pieces) => `${pieces} a la venta`,
    spoken: (name, forSale, keptPieces, onTheWay) =>
      `${name}: ${forSale} a la venta, ${keptPieces} apartados, ${onTheWay} en camino`,
    rack: 'El estante',
  }
}

const KNOWN = { counted: 'contado', baked: 'horneado' } as const

function hand({ line }: Words): HandWords {
  return {
    touchARod: 'Toque una varilla y luego cuántos se venden',
    touchMore: 'toque más varillas para una venta mixta',
    inHand: (pieces) => `en mano ${pieces}`,
    kinds: (kinds) => `${kinds} clases`,
    sold: (lines) => `vendido ${line.contents(lines)}`,
    tooSmall: (inHand) => `${inHand} en mano`,
    soldWord: 'vendido',
    number: 'Otro número',
    count: 'Contar',
    keep: 'Apartar',
    notSold: 'No vendidos',
    putBack: 'Devolver',
    sell: 'Vendido',
  }
}

const AMOUNTS: AmountsWords = {
  title: {
    sell: 'Cuántos se venden',
    keep: 'Cuántos se apartan',
    count: 'Cuántos hay',
    'not-sold': 'Cuántos no vendidos',
  },
  wholeHalfDozens: 'Medias docenas',
  singles: 'y sueltos',
  rings: (rings) => `${rings} ${rings === 1 ? 'aro' : 'aros'}`,
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
    changeover: 'cambio',
    tooLate: (atMs) => `carga de ${times.clock(atMs)}, muy tarde`,
    others: (count) => `+${count}`,
    spoken: 'El día',
    noSetUp: 'Aquí todavía no hay un local. Cargue un archivo de configuración en el escritorio.',
    looking: 'Buscando el local…',
  }
}
