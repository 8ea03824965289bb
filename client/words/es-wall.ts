import { listed } from './joined.ts'
import type { BarWords, RodWords, RulerWords, StandingWords, WallWords } from './wall.ts'
import type { Words } from './words.ts'

export function esWall(words: Words): WallWords {
  const { times, names } = words
  return {
    kettle: 'Olla',
    oven: 'Horno',
    boardsFree: (boards) => `${boards} ${boards === 1 ? 'tabla mojada libre' : 'tablas mojadas libres'}`,
    boardsShort: (boards) => `${boards === 1 ? 'falta' : 'faltan'} ${words.line.boards(boards)}`,
    becomes: (pieces, list) => `${pieces === 1 ? 'será' : 'serán'} ${list}`,
    become: ({ varietyId, pieces }) => `${pieces} ${names.variety(varietyId)}`,
    more: (count) => `${count} más`,
    following: (act) => `luego ${act}`,
    next: 'Sigue',
    noDips: 'Nada previsto',
    notReady: (name, atMs) => `${name} no está, mirar ${times.at(atMs)}`,
    standsTooLong: (name, sinceMs) => `${name} pasada ${times.since(sinceMs)}`,
    shelfFree: (shelf) => `${shelf} libre`,
    nextOn: (contents) => `sigue ${contents}`,
    topAfter: (topped) => `luego cubrir ${topped}`,
    topNow: (topped) => `ahora cubrir ${topped}`,
    atDoor: (shelf) => `${shelf} en la puerta`,
    otherShelves: (count, first) =>
      joinComma(`${count} ${count === 1 ? 'otro' : 'otros'}`, first === '' ? '' : `el primero ${first}`),
    late: 'tarde',
    rods: rodWords(words),
    ruler: rulerWords(words),
    thisScreen: 'Esta pantalla',
    standing: standingWords(words),
    bar: BAR,
    empty: EMPTY,
    touchForSound: 'toque: sonido',
    soundOff: 'sin sonido',
    quietHours: 'en silencio',
    demo: 'Demo',
    questions: (count) => `${count} ${count === 1 ? 'pregunta espera' : 'preguntas esperan'}: toque el reloj`,
  }
}

function rodWords({ times, names }: Words): RodWords {
  return {
    goneAt: times.upTo,
    mayRunOut: (fromMs) => `quizá acaba ${times.clock(fromMs)}`,
    mayNotReach: 'quizá acaba antes',
    goneSince: (atMs) => `agotado ${times.since(atMs)}`,
    mayBeGone: 'quizá agotado',
    none: 'todavía no hay',
    noneFrom: (fromMs, toMs) => `no hay ${times.clock(fromMs)}–${times.clock(toMs)}`,
    fineTo: (atMs) => `bien ${times.upTo(atMs)}`,
    more: (pieces, atMs) => `${pieces} ${times.at(atMs)}`,
    noMore: 'no vienen más',
    others: (count) => `${count} ${count === 1 ? 'otro' : 'otros'}`,
    othersFine: 'bien',
    nothingOut: 'No hay nada a la venta',
    firstAt: ({ varietyId, pieces }, atMs) => `primero: ${pieces} ${names.variety(varietyId)} ${times.at(atMs)}`,
    spoken: (name, pieces, onTheWay) => `${name}: ${pieces} a la venta, ${onTheWay} en camino`,
  }
}

function rulerWords({ times }: Words): RulerWords {
  return {
    lastLoad: (atMs) => `última carga ${times.by(atMs)}`,
    lastLoadGone: 'no hay más cargas',
    closedToday: 'hoy cerrado',
    changeover: 'cambio',
    tooLate: (atMs) => `carga de ${times.clock(atMs)}, muy tarde`,
    more: (count) => `+${count}`,
    spoken: 'El día',
  }
}

function standingWords({ times }: Words): StandingWords {
  return {
    titles: { proof: 'Leudando', chill: 'En frío', rack: 'En el carro', cool: 'Enfriando' },
    // What stands is a dough: "la masa está lista".
    ready: 'lista',
    readyPart: (pieces) => `${pieces} listas`,
    readyAt: (atMs) => `lista ${times.at(atMs)}`,
    goodTo: (atMs) => `bien ${times.upTo(atMs)}`,
    over: (sinceMs) => `pasada ${times.since(sinceMs)}`,
    nothing: 'nada',
  }
}

const BAR: BarWords = {
  nothing: 'Nada que hacer en la línea',
  done: (did) => listed('Hecho', did),
  justChanged: 'No se hizo: la pizarra acababa de cambiar. Pise otra vez.',
  nothingFor: (station) => `${station}: nada que hacer`,
  coming: (what) => `${what}: ya va alguien`,
}

const EMPTY: WallWords['empty'] = {
  connecting: {
    title: 'Buscando el local…',
    text: 'Si sigue así: ¿está encendida la computadora con Boilboard y está esta pantalla en la misma red?',
  },
  'no-set-up': {
    title: 'Aquí todavía no hay ningún local',
    text: 'Cargue el archivo de configuración al iniciar o en el escritorio. La línea aparece aquí en cuanto esté.',
  },
  'no-day': {
    title: 'Buenos días',
    text: 'El primer paso abre el día: traer, hervir o cargar.',
  },
  idle: {
    title: 'La línea está vacía',
    text: 'Lo que se forme, traiga o cargue aparece aquí.',
  },
}

function joinComma(one: string, other: string): string {
  return other === '' ? one : `${one}, ${other}`
}
