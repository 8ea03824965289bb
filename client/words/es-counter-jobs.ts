import type { CloseWords, CounterJobWords, DayOldWords, FoundWords, LeftFate, SweepWords } from './counter-jobs.ts'
import { joined } from './joined.ts'
import type { Words } from './words.ts'

export function esCounterJobs(words: Words): CounterJobWords {
  return {
    sweep: sweep(words),
    found: FOUND,
    dayOld: DAY_OLD,
    newestNote: (text, atMs) => `${joined('nota', words.times.clock(atMs))}: ${text}`,
    notes: 'Notas',
    noteCount: (count) => (count === 0 ? 'ninguna' : `${count} ${count === 1 ? 'nota' : 'notas'}`),
    close: close(words),
    more: { title: 'Más' },
  }
}

function sweep({ times }: Words): SweepWords {
  return {
    title: 'Contar varillas',
    ask: (rods) => `Contar ${rods} ${rods === 1 ? 'varilla' : 'varillas'}`,
    byHand: 'Contar varillas',
    dueSince: (atMs) => times.since(atMs),
    nextAt: (atMs) => joined('siguiente', times.at(atMs)),
    place: (rod, of) => `varilla ${rod} de ${of}`,
    thought: (number) => `se cree que hay ${number}`,
    none: 'ninguno',
    dozens: (halves) => `${dozens(halves)} doc.`,
    spokenDozens: (pieces, halves) => `unos ${pieces}: ${dozens(halves)} docenas`,
    exact: 'Número exacto',
    inHalves: 'Por medias docenas',
    next: 'Siguiente',
    skip: 'Saltar esta varilla',
    later: 'Más tarde',
    skipped: 'saltada',
    done: (rods) => `Listo: ${rods} contadas`,
    nothingCounted: 'nada contado aún',
    allCounted: 'Ya están todas. Toque una varilla arriba para corregirla.',
    about: (pieces) => `unos ${pieces}`,
  }
}

/** @example dozens(3) // "1½" */
function dozens(halves: number): string {
  const whole = Math.floor(halves / 2)
  return `${whole === 0 ? '' : whole}${halves % 2 === 0 ? '' : '½'}`
}

const FOUND: FoundWords = {
  asKnown: 'Contado como se sabía, no falta nada',
  fewer: (pieces) => `${pieces} menos de los que se sabía, quedan sin explicar`,
  more: (pieces) => `${pieces} más de los que se sabía, quedan sin explicar`,
  several: (fewer, more) => {
    const parts = [
      ...(fewer.length === 0 ? [] : [`menos de lo sabido: ${fewer.map(named).join(', ')}`]),
      ...(more.length === 0 ? [] : [`más de lo sabido: ${more.map(named).join(', ')}`]),
    ]
    return `${capitalized(parts.join('; '))}; queda sin explicar`
  },
  named: (name, text) => `${name}: ${text}`,
  good: 'Bien',
}

function capitalized(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}

function named({ name, pieces }: { readonly name: string; readonly pieces: number }): string {
  return `${name} ${pieces}`
}

const DAY_OLD: DayOldWords = {
  title: 'De ayer',
  putOut: (pieces) => `Poner ${pieces} de ayer`,
  summary: (out, toPut) => {
    const parts = [...(out > 0 ? [`${out} puestos`] : []), ...(toPut > 0 ? [`${toPut} por poner`] : [])]
    return parts.length === 0 ? 'nada' : parts.join(', ')
  },
  nothing: 'No hay piezas de ayer a la venta.',
  sold: (pieces) => `Vendidos ${pieces}`,
  soldSpoken: (pieces, name) => `vendido ${pieces} de ayer, ${name}`,
  kitchen: 'A la cocina',
  wasted: 'A la basura',
  given: 'Regalados',
  fateOf: (name, fate) => `${name}: ${fate}`,
}

const FATES: { readonly [fate in LeftFate]: string } = { dayOld: 'para mañana', given: 'regalados', wasted: 'basura' }

function close({ times }: Words): CloseWords {
  return {
    title: 'Cerrar el día',
    of: (label) => `Cerrar ${times.date(label)}`,
    count: (rods) => `Contar lo que queda: ${rods} ${rods === 1 ? 'varilla' : 'varillas'}`,
    detail: 'contar, destinos, cerrar',
    nothingLeft: 'No queda nada.',
    fate: FATES,
    all: { dayOld: 'Todo para mañana', given: 'Todo regalado', wasted: 'Todo a la basura' },
    touchToChange: 'Toque una varilla para cambiar su destino.',
    crew: 'Horas del equipo, en total',
    crewUnsaid: 'sin decir',
    hours: (hours) => `${hours} h`,
    close: 'Cerrar el día',
    summary: (parts) => parts.map(({ fate, pieces }) => `${pieces} ${FATES[fate]}`).join(', '),
    closed: (label) => `${times.date(label)} está cerrado`,
    reopen: (label) => `Reabrir ${times.date(label)}`,
    reopenDetail: 'se cerró por error',
    opensItself: 'El día siguiente lo abre lo primero que se haga por la mañana.',
    lessHours: (hours) => `${hours} horas menos`,
    moreHours: (hours) => `${hours} horas más`,
    least: 'mínimo',
    most: 'máximo',
  }
}
