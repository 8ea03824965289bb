import type { BatchStage } from '../../shared-core/shop/shop.ts'
import type { ClosedWords, CloseWords, CountWords, CrewWords, FatesWords, LastWords } from './desk-close.ts'
import type { Words } from './words.ts'

export function esClose(words: Words): CloseWords {
  const { times } = words
  return {
    lead: 'De arriba abajo, como va el trabajo. Cada parte puede quedar como está: un cierre no exige nada.',
    late: (label) => `El ${times.date(label)} sigue abierto`,
    lateHint:
      'Nadie lo cerró. Si se cierra aquí, termina ahora con lo que se cuente ahora; si no, la primera acción de la mañana nueva lo cierra sola, a la hora del último toque.',
    neverOne: 'Todavía no se cerró ningún día.',
    steps: {
      orders: 'Pedidos todavía abiertos',
      count: 'Contar lo que queda',
      fates: 'Qué pasa con eso',
      account: 'Adónde fue cada pieza',
      figures: 'El día en cinco cifras',
      crew: 'Horas de trabajo',
      notes: 'Notas para mañana',
      close: 'Cerrar el día',
    },
    orders: {
      none: 'Todos los pedidos del día están resueltos.',
      hint: 'Lo que no se diga aquí termina con el cierre como si nadie hubiera venido; lo guardado queda como del día anterior, como todo lo que sobra.',
      due: (clock) => `para las ${clock}`,
      handedOver: 'Entregado',
      nobodyCame: 'Nadie vino',
      actOf: (act, mark) => `${act}: ${mark}`,
    },
    count: COUNT,
    fates: FATES,
    account: {
      explained:
        'Sin explicar es lo que un conteo encontró distinto de lo que sabía el tablero: + si faltaban piezas que nadie tocó (vendidas, comidas, caídas), − si había más. Se anota tal cual, nunca se reparte.',
      gaps: 'Todas las diferencias del día, para cualquier lado',
      unexplained: 'Sin explicar hoy',
    },
    crew: CREW,
    notes: {
      hint: 'Están en la pared al empezar el turno siguiente, hasta que alguien las borre.',
      none: 'No hay notas.',
    },
    close: last(words),
    closed: closed(words),
    pieces: {
      less: (name, step) => `${name}: ${step} menos`,
      more: (name, step) => `${name}: ${step} más`,
    },
  }
}

const COUNT: CountWords = {
  hint: 'Solo lo que está en duda. Lo que se sabe bien no se pregunta.',
  allKnown: 'Todo se sabe bien: no hay nada que contar.',
  thinks: (pieces) => `el tablero cree que ${pieces}`,
  field: (name) => `Piezas de ${name} que hay`,
  counted: (pieces) => `Contado: ${pieces}`,
  say: 'Contado',
  noneLeft: 'No queda nada',
}

const FATES: FatesWords = {
  hint: 'Diga qué se regala y qué se tira; el resto queda para mañana.',
  nothing: 'No queda nada a la venta.',
  columns: { variety: 'variedad', left: 'queda', given: 'regaladas', wasted: 'basura', dayOld: 'para mañana' },
  given: (name) => `${name}, regaladas`,
  wasted: (name) => `${name}, basura`,
  allGiven: 'Regalar todo',
  allWasted: 'Todo a la basura',
  allStay: 'Todo para mañana',
  book: (given, wasted) =>
    `Anotar: ${[given > 0 ? `${given} regaladas` : '', wasted > 0 ? `${wasted} a la basura` : ''].filter((part) => part !== '').join(', ')}`,
  nothingToBook: 'Nada que anotar',
  earlier: (name) => `${name}, ya era de ayer`,
}

const CREW: CrewWords = {
  field: 'Horas trabajadas, de todos juntos',
  hint: 'Tres personas por seis horas son 18. Puede quedar vacío.',
  hours: (text) => `${text} horas`,
  wrong: 'Las horas son un número de 0 a 200, como 17.5.',
}

const STAGES: { readonly [stage in BatchStage]: string } = {
  proof: 'leudando',
  chill: 'en frío',
  rack: 'en el carro',
  kettle: 'en la olla',
  boards: 'en tablas',
  oven: 'en el horno',
}

function last({ line }: Words): LastWords {
  return {
    kept: (pieces) => `${line.pieces(pieces)} apartadas para alguien: siguen apartadas.`,
    onTheLine: (pieces) =>
      `${line.pieces(pieces)} todavía en la olla, en tablas o en el horno: el cierre pregunta por ellas.`,
    standing: (pieces) => `${line.pieces(pieces)} leudando, en frío o en el carro: pasan a la cuenta de mañana.`,
    openSteps: (steps) =>
      `${steps} ${steps === 1 ? 'paso' : 'pasos'} del cambio sin decir que ${steps === 1 ? 'está hecho' : 'están hechos'}.`,
    uncounted: (names) => `Sin contar: ${line.list(names)}.`,
    stage: (stage) => STAGES[stage],
    stays: (pieces) =>
      pieces === 0
        ? 'No queda nada para mañana.'
        : `${line.pieces(pieces)} ${pieces === 1 ? 'queda' : 'quedan'} para mañana.`,
    closeIt: 'Cerrar el día',
    allDone: 'No hay nada pendiente.',
  }
}

function closed({ times }: Words): ClosedWords {
  return {
    title: (label) => `El ${times.date(label)} está cerrado`,
    at: (atMs) => `Cerrado ${times.at(atMs)}.`,
    reopen: 'Reabrir el día',
    reopenHint:
      'Como si no se hubiera cerrado: lo que quedó vuelve a la venta y la cuenta sigue. Hasta que empiece el día siguiente.',
    noReopen: 'El día siguiente ya empezó: este queda cerrado.',
    openNext: 'Abrir el día siguiente',
    replay: 'Ver el día otra vez',
  }
}
