import type { DemandSetUpWords } from './set-up-demand.ts'
import type { SetUpFields } from './set-up-fields.ts'

export const ES_DEMAND_FIELDS: Pick<SetUpFields, 'demand' | 'specialDay'> = {
  demand: {
    region: 'Feriados de',
    disappointCents: 'Que alguien se vaya sin lo suyo cuesta',
    takeAnotherPercent: 'Llevan otra variedad, %',
    dayOldSells: 'Piezas de ayer que se venden en un día',
  },
  specialDay: { name: 'Nombre', kind: 'Tipo', spans: 'Fechas' },
}

export const ES_DEMAND: DemandSetUpWords = {
  kind: {
    holiday: { name: 'feriado', hint: 'Un día feriado en que el local abre.' },
    school: { name: 'vacaciones de escuela', hint: 'Las familias vienen a otras horas, o no están.' },
    event: { name: 'evento', hint: 'Una feria en la calle, un partido, una carrera frente a la puerta.' },
    closure: { name: 'cerrado', hint: 'El local no abre; no se hace nada para ese día.' },
    weather: { name: 'tiempo', hint: 'Nieve, calor, tormenta: se escribe después o el día antes.' },
  },
  does: {
    disappointCents:
      'Además de la venta perdida: lo que vale para ustedes que nadie se vaya sin lo que buscaba. Más alto es hornear más.',
    takeAnotherPercent:
      'De quienes no encuentran su variedad, tantos compran otra. Más alto: que se acabe una variedad duele menos.',
    dayOldSells: 'Todas las variedades juntas. Lo que queda de más no vale nada, así que se aconseja menos.',
    dayOldPercent: 'Lo que da una pieza de ayer, en % del precio de la fresca. Se pone en la página del mostrador.',
  },
  byVariety: 'Por variedad',
  byVarietyHint:
    'Una pieza que usa la cocina, por ejemplo en un sándwich, da más que una suelta: diga lo que da la pieza, menos lo demás que lleva. Déjelo vacío donde la cocina no la usa.',
  guessing:
    'Mientras no hay ventas, la pizarra se guía por esto. Basta un cálculo aproximado: cuenta menos con cada día que se vende.',
  usualSum: 'un día de siempre en total',
  variety: 'Variedad',
  region: {
    country: 'País',
    part: 'Estado o región',
    wholeCountry: 'todo el país',
    notSaid: 'sin decir',
    empty:
      'Elija dónde está el local, y los feriados de allí se agregan con un toque, con sus fechas de los últimos tres años, para que se entiendan las ventas de entonces.',
    waiting: 'Buscando feriados …',
    noContact: 'El servidor del local no contesta. Mientras tanto las fechas se pueden escribir.',
  },
  holidays: {
    title: 'Feriados de los próximos 12 meses',
    hint: 'Agregue aquellos en que se vende distinto que en un día de siempre. Las fechas pasadas vienen con ellos.',
    add: 'Agregar',
    addAll: (count) => `Agregar los ${count}`,
    have: 'en la lista',
    others: 'Otros días que la gente celebra',
    none: 'No se conoce ningún feriado de allí en los próximos 12 meses.',
    source: 'Feriados de date-holidays (CC BY 3.0). Las reglas locales pueden ser otras: vale lo que ustedes saben.',
    line: (next, before) =>
      before === 0 ? next : `${next}; y ${before} ${before === 1 ? 'fecha pasada' : 'fechas pasadas'}`,
  },
  dates: {
    title: 'Fechas',
    from: 'Primer día',
    to: 'Último día',
    add: 'Agregar estas fechas',
    remove: (span) => `Quitar ${span}`,
    none: 'Sin fechas todavía: no se aprende ni se prevé nada.',
    again: 'Otra vez el próximo año',
    sameWeekday: 'conservar el día de la semana',
    sameWeekdayHint: 'Una feria del último sábado sigue en sábado; sin esto queda la misma fecha.',
    long: (date, year) => `${date} de ${year}`,
    line: (next, count) => {
      const all = count === 1 ? 'una vez' : `${count} veces`
      if (count === 0) return 'sin fechas'
      return next === null ? `${all}, todas pasadas` : `la próxima, ${next} · ${all}`
    },
    full: 'La lista de fechas está llena. Quite primero las viejas.',
  },
}

export const ES_DEMAND_MISFITS: Readonly<Record<string, string>> = {
  'specialDay/spans': 'Fechas que hay en el calendario, cada tramo del primer día al último, ninguna dos veces.',
}
