import type { HistoryWords } from './desk-history.ts'
import { percentOff, roughly } from './desk-history.ts'
import type { Words } from './words.ts'

const WEEKDAYS = ['lunes', 'martes', 'miércoles', 'jueves', 'viernes', 'sábado', 'domingo']

export function esHistory({ times, line }: Words): HistoryWords {
  return {
    pagesName: 'Páginas de ventas y pronósticos',
    pages: {
      sales: 'Lo que se vendió',
      trust: 'Cuánto fiarse de los pronósticos',
      line: 'Los tiempos de la línea y el horno',
    },
    waiting: 'Mirando las ventas pasadas…',
    noContact: 'No se pudo llegar al servidor. Inténtelo cuando haya contacto.',
    notReady: 'Se están leyendo las ventas pasadas; sigue por sí solo.',
    unknown: 'El local no tiene esa masa o variedad.',
    none: {
      title: 'Todavía no se conoce ninguna venta.',
      toDo: 'Tome lo que su caja tiene registrado, o toque las ventas en el mostrador: cada día cerrado se muestra aquí y hace más seguros los pronósticos.',
      salesIn: 'A los archivos de la caja',
    },
    weekday: (weekday) => WEEKDAYS[weekday - 1] ?? '',
    number: roughly,
    choose: {
      of: 'Ventas de',
      all: 'todas las variedades',
      doughs: 'Masas',
      varieties: 'Variedades',
      range: 'En',
      ranges: {
        '28': 'las últimas 4 semanas',
        '84': 'las últimas 12 semanas',
        '364': 'el último año',
        all: 'todo lo conocido',
      },
    },
    days: days(times.date, line.pieces),
    week: {
      title: 'Una semana normal',
      hint: 'La media de cada día de la semana. Sin los días especiales.',
      weekday: 'día',
      days: 'días',
      pieces: 'vendidas',
      lost: 'probablemente perdidas',
    },
    hours: {
      title: 'Un día normal por horas',
      hint: 'Piezas vendidas en cada hora, de media; cuanto más lleno el color, más. Sin los días especiales.',
      untimed: (percent) =>
        `El ${percent} % salió sin que nadie dijera cuándo y no está aquí: lo hallaron los recuentos y el cierre.`,
    },
    learnt: learnt(line.pieces),
    day: day(times.date),
  }
}

function days(date: (label: string) => string, pieces: (count: number) => string): HistoryWords['days'] {
  return {
    title: 'Día por día',
    hint: 'Toque un día para mirarlo y decir qué tuvo de especial.',
    sold: 'vendidas',
    lost: 'probablemente perdidas',
    soldOut: 'agotada antes del cierre',
    special: 'día especial',
    date: 'día',
    asTable: 'Mostrar como tabla',
    asPlot: 'Mostrar como dibujo',
    csv: 'Para una hoja de cálculo (CSV)',
    noDays: 'No se vendió nada de ello en este tiempo.',
    readout: (label, sold, lost, soldOut) =>
      [
        `${date(label)}: ${pieces(sold)} vendidas`,
        ...(lost > 0 ? [`unas ${Math.round(lost)} perdidas`] : []),
        ...(soldOut > 0 ? [`${soldOut} ${soldOut === 1 ? 'variedad agotada' : 'variedades agotadas'}`] : []),
      ].join(', '),
    spoken: (count, sold, lost) =>
      `Piezas vendidas por día, ${count} días: ${sold} en total, y unas ${Math.round(lost)} perdidas cuando no había. La tabla tiene cada día.`,
    look: (label) => `Mirar el ${date(label)}`,
  }
}

function learnt(pieces: (count: number) => string): HistoryWords['learnt'] {
  return {
    title: 'Lo que la pizarra aprendió de ello',
    basis: {
      guess: 'Todavía calcula a ojo: va por lo escrito en la configuración y por otras variedades de la masa.',
      few: 'Ha visto pocos días. Cada uno más cuenta mucho.',
      many: 'Ha visto días suficientes para ir solo por ellos.',
    },
    level: (count) =>
      `Un día normal pide unas ${pieces(Math.round(count))}, sin contar días de la semana ni especiales.`,
    factor: (part) => {
      const percent = percentOff(part)
      return percent === 0 ? 'como siempre' : `${Math.abs(percent)} % ${percent > 0 ? 'más' : 'menos'}`
    },
    weekdays: 'Días de la semana, frente a su media',
    specials: 'Días especiales, frente a uno normal',
    noSpecials: 'Ningún día especial tiene nombre aún. Toque arriba un día que destaque y diga qué fue.',
    sure: (count) =>
      count === 0
        ? 'aún no visto'
        : count === 1
          ? 'visto una vez: poco más que a ojo'
          : count < 5
            ? `visto ${count} veces: poco seguro`
            : `visto ${count} veces`,
  }
}

function day(date: (label: string) => string): HistoryWords['day'] {
  return {
    back: 'Todos los días',
    title: (label) => date(label),
    nothing: 'No se sabe nada de este día. Estaba cerrado, o sus ventas no se han tomado.',
    record: 'El día como lo registró la pizarra',
    variety: 'variedad',
    forecast: 'pronóstico',
    forecastHint:
      'El pronóstico es el de la mañana, antes de vender nada: 8 de cada 10 días entre los dos primeros números.',
    range: (low, likely, high) => `${low}–${high}, probable ${likely}`,
    gone: 'sin piezas',
    span: (from, to) => `${from}–${to}`,
    specialTitle: '¿Qué tuvo de especial este día?',
    specialHint: 'De un día con nombre se aprende aparte, y se prevé la próxima vez que llegue.',
    newName: 'Otra cosa',
    newKind: 'tipo',
    add: 'Nombrar este día',
    full: 'La lista de días especiales está llena. Quite antes los viejos en la configuración.',
    nameTaken: 'Hay un día especial con este nombre; elíjalo arriba.',
    kinds: { holiday: 'feriado', school: 'vacaciones', event: 'evento', closure: 'cerrado', weather: 'tiempo' },
  }
}
