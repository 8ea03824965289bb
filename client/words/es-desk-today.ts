import type { Prospect } from '../../shared-core/stock/prospect.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { ALLERGEN_NAMES } from './allergens.ts'
import type { ChangeoverWords, KettleWords, OvenWords, RodsWords, StepsWords, TodayWords } from './desk-today.ts'
import type { Words } from './words.ts'

export function esToday(words: Words): TodayWords {
  const { times } = words
  return {
    ruler: {
      lastLoad: (atMs) => `última carga ${times.by(atMs)}`,
      lastLoadGone: 'no hay más cargas',
      closedToday: 'hoy cerrado',
      changeover: 'cambio',
      tooLate: (atMs) => `carga de ${times.clock(atMs)} muy tarde`,
      spoken: 'El día',
      closedDay: 'El local está cerrado hoy.',
    },
    steps: steps(words),
    changeover: changeover(words),
    oven: oven(words),
    kettle: kettle(words),
    rods: rods(words),
  }
}

function steps({ times }: Words): StepsWords {
  return {
    opening: 'Lista de apertura',
    changeover: 'Lista del cambio',
    openingHead: (atMs, done, all) =>
      `Contada hacia atrás desde la primera carga, ${times.at(atMs)}. ${done} de ${all} listas.`,
    changeoverHead: (atMs, done, all) =>
      `Contada hacia atrás desde el horno vacío, ${times.at(atMs)}. ${done} de ${all} listas.`,
    nothing: 'No hay nada en la lista ahora.',
    floatTest: (dough) => `Prueba de flotar: ${dough}`,
    due: (atMs) => times.clock(atMs),
    status: { due: 'ahora', late: 'tarde' },
    done: (atMs, person) => `hecho ${times.at(atMs)}${person === '' ? '' : `, ${person}`}`,
    who: (step) => `Quién lo hace: ${step}`,
    nobody: 'nadie todavía',
    doIt: 'Hecho',
    passed: 'Flota',
    notReady: 'Todavía no',
    lookAgainIn: (minutes) => `en ${minutes} min`,
    lookAgain: 'mirar otra vez',
    foundReady: 'flota',
    foundNotReady: (atMs) => `todavía no, mirar otra vez ${times.at(atMs)}`,
    dippedAnyway: 'no estaba lista y entró igual a la olla',
  }
}

function changeover({ times, line }: Words): ChangeoverWords {
  return {
    title: 'Cambio',
    plan: (fromMs, toMs, menu) =>
      `Horno vacío ${times.by(fromMs)}${menu === null ? '' : `; ${menu} desde ${times.clock(toMs)}`}.`,
    slipped: (minutes) => `Son ${Math.abs(minutes)} min más ${minutes > 0 ? 'tarde' : 'temprano'} que siempre.`,
    over: 'Después de esto no se hornea más, salvo que un piso vuelva a recibir.',
    emptyAt: (atMs) => `Según lo previsto, la última carga sale ${times.at(atMs)}.`,
    nothingInside: 'No hay nada en el horno ni previsto.',
    later: '15 min más tarde',
    earlier: '15 min antes',
    asUsual: 'Otra vez como siempre',
    wouldBe: ({ fromMs, lastLoadInByMs }) =>
      `Horno vacío ${times.by(fromMs)}, última carga adentro ${times.by(lastLoadInByMs)}.`,
    plannedMore: (loads) =>
      loads > 0
        ? `${loads} ${loads === 1 ? 'carga prevista llega' : 'cargas previstas llegan'} entonces a tiempo.`
        : `${-loads} ${loads === -1 ? 'carga prevista queda' : 'cargas previstas quedan'} entonces muy tarde.`,
    loadsMore: (loads, pieces) =>
      `Lugar para ${Math.abs(loads)} ${Math.abs(loads) === 1 ? 'carga' : 'cargas'} (${line.pieces(Math.abs(pieces))}) ${loads > 0 ? 'más' : 'menos'}.`,
    nothingMoves: 'Las cargas quedan como están.',
    columns: { shelf: 'piso', state: 'ahora', free: 'libre' },
    state: { bagels: 'recibe bagels', emptying: 'última carga adentro', over: 'terminó con bagels' },
    overHere: 'Terminó con bagels',
    bagelsAgain: 'Bagels otra vez',
    left: (lines) => `Para la tarde: ${line.contents(lines)}.`,
    nothingLeft: 'No queda nada para la tarde.',
    withoutShelf: (loads) =>
      `${loads} ${loads === 1 ? 'carga prevista no tiene' : 'cargas previstas no tienen'} piso que reciba bagels.`,
  }
}

function oven({ times }: Words): OvenWords {
  return {
    title: 'Lecturas del horno',
    whole: 'El horno',
    reading: (degrees, unit, atMs) => `${degrees} °${unit} ${times.at(atMs)}`,
    none: 'sin lectura hoy',
    degrees: (where, unit) => `${where}: grados ${unit}`,
    record: 'Anotar',
    hint: 'Léala en el medidor del horno; no hace falta meter la mano.',
  }
}

function kettle({ times, line }: Words): KettleWords {
  return {
    title: 'Olla, tablas y contacto',
    care: {
      topUp: 'Rellenar',
      malt: 'Malta',
      skim: 'Espumar',
      change: 'Cambiar el agua',
      boiling: 'Ya hierve',
      washBoards: 'Lavar tablas',
      washTrays: 'Lavar bandejas de semillas',
      washPeel: 'Lavar pala',
      sweepStone: 'Barrer la piedra',
    },
    since: (boiled, every) => `${boiled} de ${every} piezas desde entonces`,
    due: 'ya toca',
    lastAt: (atMs) => `última vez ${times.at(atMs)}`,
    boilsAgain: (atMs) => `Entró agua fría: hierve otra vez hacia ${times.clock(atMs)}.`,
    touched: {
      kettle: 'En el agua de la olla desde que se cambió',
      boards: 'En las tablas desde que se lavaron',
      trays: 'En las bandejas de semillas desde que se lavaron',
      peel: 'En la pala desde que se lavó',
      stone: 'En la piedra desde que se barrió',
    },
    nothing: {
      kettle: 'Nada conocido desde que se cambió el agua.',
      boards: 'Nada conocido desde que se lavaron las tablas.',
      trays: 'Nada conocido desde que se lavaron las bandejas de semillas.',
      peel: 'Nada conocido desde que se lavó la pala.',
      stone: 'Nada conocido desde que se barrió la piedra.',
    },
    contactHint: 'Sale de lo que se anotó y se tocó. El contacto que nadie anotó lo juzga la gente de aquí.',
    allergen: ALLERGEN_NAMES.es,
    contact: (name, pieces, allergens) =>
      allergens.length === 0 ? `${name} ${pieces}` : `${name} ${pieces} (${allergens.join(', ')})`,
    boards: 'Tablas que sirven hoy',
    boardsOf: (count) => `de ${line.boards(count)}`,
    usable: 'Fijar tablas',
  }
}

function rods({ times }: Words): RodsWords {
  return {
    title: 'Lo que queda',
    none: 'No hay nada a la venta ni en camino.',
    known: { counted: 'contado', swept: 'contado', baked: 'horneado', sold: 'vendido' },
    cooling: (pieces) => `${pieces} enfriando`,
    kept: (pieces) => `${pieces} apartados`,
    dayOld: (pieces) => `${pieces} de ayer`,
    coming: (pieces, atMs) => `${pieces} ${times.at(atMs)}`,
    spoken: (name, pieces) => `${name}: ${pieces} a la venta`,
    gone: (atMs) => `sin nada ${times.since(atMs)}`,
    ahead: (prospect, moreAtMs) => aheadText(prospect, moreAtMs, times),
  }
}

function aheadText(prospect: Prospect, moreAtMs: EpochMs | null, times: Words['times']): string {
  const { by, goneAtMs, isGap, doubt, between, lasts, leftAtClose } = prospect
  const marked = (text: string) => (by === 'guess' ? `${text}, a ojo` : text)
  if (goneAtMs !== null) {
    if (isGap && moreAtMs !== null) return marked(`nada ${times.clock(goneAtMs)}–${times.clock(moreAtMs)}`)
    const text = `acaba hacia ${times.clock(goneAtMs)}`
    if (between === null || between.toMs === null) return marked(text)
    return marked(`${text} (${times.clock(between.fromMs)} a ${times.clock(between.toMs)})`)
  }
  if (doubt !== null) {
    return marked(
      doubt.before === 'more'
        ? 'quizá acaba antes de que llegue más'
        : `quizá acaba desde ${times.clock(doubt.fromMs)}`,
    )
  }
  if (!lasts) return ''
  return marked(leftAtClose === null ? 'alcanza al cierre' : `alcanza al cierre, quedan unos ${leftAtClose}`)
}
