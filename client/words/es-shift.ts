import type { CareKind } from '../../shared-core/day/said.ts'
import { ALLERGEN_NAMES } from './allergens.ts'
import { listed } from './joined.ts'
import type { CareWords, ChangeWords, ShiftWords, StepWords } from './shift.ts'
import type { Words } from './words.ts'

const ALLERGENS = ALLERGEN_NAMES.es

export function esShift(words: Words): ShiftWords {
  return { steps: steps(words), change: change(words), care: care(words) }
}

function steps({ times }: Words): StepWords {
  return {
    opening: 'Apertura',
    changeover: 'Cambio',
    toZero: (list, zeroAtMs, nowMs) => {
      const what = list === 'opening' ? 'Primera carga' : 'Horno vacío'
      if (zeroAtMs > nowMs) return `${what} ${times.within(zeroAtMs - nowMs)}`
      return list === 'opening' ? `${what}: tocaba ${times.at(zeroAtMs)}` : `${what} ${times.by(zeroAtMs)}`
    },
    progress: (done, all) => `${done} de ${all} hechos`,
    allDone: 'todo hecho',
    float: (name, dough) => `${name} ${dough}`,
    due: (due, nowMs) =>
      due.status === 'coming' ? `${times.at(due.atMs)}, ${times.when(due, nowMs)}` : times.when(due, nowMs),
    dueShort: (due, nowMs) => (due.status === 'coming' ? times.clock(due.atMs) : times.when(due, nowMs)),
    doneAt: (atMs) => `hecho ${times.clock(atMs)}`,
    lookAgain: (atMs) => `no está, mirar ${times.clock(atMs)}`,
    dippedAnyway: 'hervida igualmente',
    done: 'Hecho',
    passed: 'Flota',
    notReady: 'Aún no',
    lookIn: (minutes) => `mirar otra vez en ${minutes} min`,
    give: 'Encargar',
    giveTo: (step) => `Quién lo hace: ${step}`,
    nobody: 'Nadie en particular',
    as: (person) => `como ${person}`,
    who: 'Quién',
    nothing: 'Ahora no hay nada en esta lista. Sus pasos se definen en el escritorio.',
    more: (count) => `${count} más`,
  }
}

function change({ times }: Words): ChangeWords {
  const shelfState: ChangeWords['shelfState'] = (state, freeAtMs) => {
    if (state === 'over') return 'terminado'
    if (state === 'bagels') return 'bagels'
    return freeAtMs === null ? 'vaciándose' : `vaciándose ${times.upTo(freeAtMs)}`
  }
  return {
    when: (fromMs, toMs, nowMs) => {
      if (nowMs < fromMs) return `Cambio ${times.within(fromMs - nowMs)}`
      return nowMs < toMs ? `Cambio ${times.since(fromMs)}` : 'Después del cambio'
    },
    shelf: (name, state, freeAtMs) => `${name}: ${shelfState(state, freeAtMs)}`,
    several: (count, state) =>
      // "3 bagels" alone would be pieces.
      `${count} ${state === 'bagels' ? `${count === 1 ? 'recibe' : 'reciben'} bagels` : shelfState(state, null)}`,
    shelves: 'Piso por piso',
    list: 'Lista',
    ovenEmpty: (atMs) => (atMs === null ? 'horno vacío' : `horno vacío ${times.at(atMs)}`),
    reading: (degrees, unit, atMs) => `${degrees} °${unit} ${times.at(atMs)}`,
    noReading: 'sin lectura',
    readings: 'Lecturas del horno',
    wholeOven: 'Todo el horno',
    typing: (place, unit) => `${place}, °${unit}`,
    type: 'Escribirlo',
    save: 'Anotar',
    wipeOut: 'Borrar',
    typeFirst: 'escríbalo antes',
    over: 'Terminó con bagels',
    bagelsAgain: 'Otra vez bagels',
    shelfState,
    slip: 'Moverlo',
    slipBy: (minutes) => `${Math.abs(minutes)} min ${minutes < 0 ? 'antes' : 'después'}`,
    slipTo: (fromMs) => `cambio ${times.at(fromMs)}`,
    lastLoad: (atMs) => `última carga ${times.by(atMs)}`,
    loads: (loads, pieces) => {
      if (loads === 0) return 'no cabe ni una carga más ni una menos'
      const what = `${Math.abs(loads)} ${Math.abs(loads) === 1 ? 'carga' : 'cargas'} ${loads > 0 ? 'más' : 'menos'}`
      return `${what}: ${Math.abs(pieces)} piezas`
    },
    planned: (more) => {
      if (more === 0) return ''
      const loads = `${Math.abs(more)} ${Math.abs(more) === 1 ? 'carga prevista' : 'cargas previstas'}`
      return more > 0 ? `${loads} más a tiempo` : `${loads} tarde`
    },
    slipped: (minutes) =>
      minutes === 0 ? 'a su hora' : `${Math.abs(minutes)} min ${minutes < 0 ? 'antes' : 'después'} de su hora`,
    usual: 'De vuelta a su hora',
    none: 'No hay cambio: sin segunda carta, o sin día abierto.',
    left: 'Queda para la tarde',
    noneAfter: 'Hoy ya no se hornean más bagels.',
    nothingLeft: 'No queda nada para la tarde.',
    withoutShelf: (loads) => `${loads} ${loads === 1 ? 'carga prevista' : 'cargas previstas'} sin piso`,
  }
}

function care({ times }: Words): CareWords {
  const boiled: CareWords['boiled'] = (pieces, sinceMs) =>
    sinceMs === null ? `${pieces} hervidos` : `${pieces} hervidos ${times.since(sinceMs)}`
  return {
    title: 'Olla, tablas y contacto',
    care: (kind) => CARES[kind],
    boiled,
    reminder: (kind, pieces, sinceMs) => listed(CARES[kind], boiled(pieces, sinceMs)),
    every: (pieces) => `cada ${pieces}`,
    boilsAgain: 'hierve de nuevo',
    boilsIn: (atMs, nowMs) => `hierve de nuevo ${times.within(atMs - nowMs)}`,
    inWater: 'En el agua desde su cambio',
    onBoards: 'En las tablas desde su lavado',
    onOthers: 'En bandejas, pala y piedra',
    places: { trays: 'Bandejas', peel: 'Pala', stone: 'Piedra' },
    contact: (name, pieces) => `${name} ${pieces}`,
    contains: (contains) => `contiene ${contains.map((allergen) => ALLERGENS[allergen]).join(', ')}`,
    brings: (allergens) => `trae ${allergens.map((allergen) => ALLERGENS[allergen]).join(', ')} al agua`,
    noContact: 'nada anotado',
    caution: 'Según lo anotado y tocado, nada más: del contacto cruzado juzga quien está aquí.',
    usable: 'Tablas que sirven hoy',
    cares: 'Cuidado',
    board: { one: 'tabla', many: 'tablas' },
  }
}

const CARES: { readonly [kind in CareKind]: string } = {
  topUp: 'Rellenar',
  malt: 'Malta',
  skim: 'Espumar',
  change: 'Cambiar el agua',
  boiling: 'Ya hierve',
  washBoards: 'Lavar tablas',
  washTrays: 'Lavar bandejas de semillas',
  washPeel: 'Lavar pala',
  sweepStone: 'Barrer la piedra',
}
