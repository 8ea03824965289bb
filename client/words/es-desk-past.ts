import type { PastWords, ReplayWords } from './desk-past.ts'
import type { Words } from './words.ts'

export function esPast(words: Words): PastWords {
  const { times } = words
  return {
    waiting: 'Buscando en el registro…',
    none: 'Todavía no hay ningún día en el registro.',
    noContact: 'No se pudo llegar al servidor. Inténtelo cuando haya contacto.',
    notReady: 'Los días se están armando desde el registro; sigue solo.',
    older: 'Días anteriores',
    columns: {
      day: 'día',
      missed: 'faltó',
      left: 'quedó al cierre',
      onTime: 'había al abrir',
      dozens: 'docenas por hora de trabajo',
      unexplained: 'sin explicar',
    },
    open: 'sigue abierto',
    notKnown: '–',
    plots: { left: 'Quedó al cierre', unexplained: 'Sin explicar', missed: 'Faltó' },
    plotSpoken: (name, values) => `${name} por día, del más viejo al más nuevo: ${values.join(', ')}`,
    look: (label) => `Ver el ${times.date(label)}`,
    replay: replay(words),
  }
}

function replay({ times, line }: Words): ReplayWords {
  return {
    title: (label) => times.date(label),
    back: 'Todos los días',
    loading: 'Trayendo el día…',
    unknown: 'El local no tiene ese día.',
    otherForm: 'El servidor habla una forma más nueva que esta página. Cárguela otra vez.',
    nothingHappened: 'Ese día no pasó nada.',
    ruler: 'Momento del día',
    at: (atMs) => `El local ${times.at(atMs)}`,
    play: 'Reproducir',
    stop: 'Parar',
    pace: 'Un minuto pasa en',
    minuteBack: 'un minuto atrás',
    minuteOn: 'un minuto adelante',
    lanes: 'Qué había en el horno, piso por piso',
    gapsTitle: 'Qué se acabó',
    noGaps: 'Nada se acabó mientras el local estaba abierto.',
    gap: (name, fromMs, toMs) => `${name}: nada ${times.clock(fromMs)}–${times.clock(toMs)}`,
    load: (shelf, fromMs, toMs, contents) =>
      `${shelf}, ${times.clock(fromMs)}${toMs === null ? '' : `–${times.clock(toMs)}`}: ${contents}`,
    oven: 'En el horno',
    line: 'En la línea',
    rods: 'A la venta',
    empty: 'vacío',
    nothingOnLine: 'No hay nada antes del horno.',
    noRods: 'No había nada a la venta.',
    phase: { 'first-side': 'primer lado', 'second-side': 'segundo lado' },
    stage: (stage) => line.stageTitle(stage),
    last: 'Última acción',
    hint: 'Arrastre sobre los pisos, o use las flechas en la regla: un minuto cada una; las teclas de página, un cuarto de hora.',
  }
}
