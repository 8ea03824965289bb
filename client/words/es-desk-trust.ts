import type { Off } from '../../shared-core/live/trust.ts'
import { roughly } from './desk-history.ts'
import type {
  CostWords,
  HeldWords,
  OverrideWords,
  TrustSummaryWords,
  TrustTableWords,
  TrustWords,
} from './desk-trust.ts'
import type { Words } from './words.ts'

export function esTrust({ times }: Words): TrustWords {
  return {
    of: 'Pronósticos de',
    each: 'cada variedad',
    ranges: { '28': 'las últimas 4 semanas', '84': 'las últimas 12 semanas', '365': 'el último año' },
    summary: SUMMARY,
    held: HELD,
    tables: TABLES,
    one: {
      title: (name) => `${name}: lo pronosticado y lo pedido`,
      hint: 'Cada barra es el margen de 8 de cada 10 días dicho por la mañana; cada punto, lo que se pidió.',
      range: 'dicho por la mañana',
      asked: 'pedidas',
      estimated: 'agotada: estimado',
      noDays: 'Ningún día suyo se pronosticó en este tiempo.',
      readout: (date, asked, low, high, isEstimated) =>
        `${times.date(date)}: se dijo de ${low} a ${high}, se pidieron ${isEstimated ? 'unas ' : ''}${asked}`,
      off: (name, off) => `${name} en un día normal: la pizarra falló ${offBy(off)}.`,
      spoken: (name, inside, of) => `${name}: de ${of} días, ${inside} cayeron dentro del margen dicho.`,
    },
    cost: COST,
    overrides: OVERRIDES,
  }
}

const offBy = ({ board, asked, lastWeek, lastFour }: Off) =>
  `por ${roughly(board)} piezas de ${roughly(asked)}; el mismo día de la semana anterior, por ${roughly(lastWeek)}; la media de los últimos cuatro, por ${roughly(lastFour)}`

const SUMMARY: TrustSummaryWords = {
  title: 'Cuánto se equivocó',
  noDays: 'Todavía no se ha pronosticado y vendido ningún día.',
  nothingToCompare: 'Aún no hay con qué comparar: hace falta una segunda semana.',
  each: (off) => `Una variedad en un día normal: la pizarra falló ${offBy(off)}.`,
  shop: (off) => `Todas las variedades de un día juntas: falló ${offBy(off)}.`,
  beside: {
    nearer: 'Estuvo más cerca que las dos formas simples.',
    asNear: 'Estuvo más o menos tan cerca como la mejor de las dos formas simples.',
    farther:
      'Estuvo más lejos que la mejor de las dos formas simples. Con pocos días puede ser azar; si sigue así, vaya por la forma simple.',
  },
  estimated: (estimated, rows, without) =>
    `${estimated} de los ${rows} pronósticos eran de algo que se agotó: lo pedido es ahí una estimación en la que el propio pronóstico tiene parte.${
      without === null ? '' : ` Sin ellos: falló ${offBy(without)}.`
    }`,
  basis: ({ guess, few, many }) =>
    `${[
      ...(many > 0 ? [`${many} ${many === 1 ? 'variedad va' : 'variedades van'} por muchos días de ventas`] : []),
      ...(few > 0 ? [`${few} por pocos`] : []),
      ...(guess > 0 ? [`${guess} a ojo`] : []),
    ].join(', ')}.`,
  known: (days, judged) => `Se conocen ${days} días abiertos; aquí se juzgan ${judged}.`,
  guessing:
    'La pizarra todavía calcula a ojo mucho de esto. Conoce bien una variedad tras unas dos semanas de días abiertos, y un día especial tras unos pocos de su tipo; hasta entonces, vaya por lo que usted sabe.',
  how: 'Cada día se pronosticó solo con los días anteriores, como habría sido esa mañana.',
}

const HELD: HeldWords = {
  title: '¿Cumplió lo que dijo?',
  hint: 'Las piezas son enteras, así que un margen suele guardar algo más de lo que dice su nombre; «debería» lo incluye. Lo que depende de pocos días puede ser azar.',
  what: {
    inside: 'dentro del margen de 8 de cada 10',
    likely: 'lo «probable» bastó',
    careful: 'lo «prudente» bastó, pensado para 8 de 10 días',
    plenty: 'lo «de sobra» bastó, pensado para 9 de 10 días',
  },
  columns: { said: 'pronósticos', held: 'fueron', should: 'debería', verdict: 'veredicto' },
  share: ({ hits, of }) => `${hits} de ${of}${of === 0 ? '' : ` (${Math.round((100 * hits) / of)} %)`}`,
  should: ({ expected }) => `unos ${Math.round(expected)}`,
  verdict: {
    none: '–',
    asItShould: 'como debe ser',
    tooSure: 'demasiado seguro de sí',
    tooUnsure: 'más inseguro de lo necesario',
    tooLow: 'demasiado bajo',
    tooHigh: 'demasiado alto',
  },
}

const TABLES: TrustTableWords = {
  varieties: 'Por variedad',
  doughs: 'Por masa',
  weekdays: 'Por día de la semana',
  rests: 'Para el resto del día',
  restsHint: 'Pronosticado con lo vendido hasta entonces, frente a lo que vino después.',
  rest: (clock) => `desde las ${clock}`,
  columns: {
    variety: 'variedad',
    dough: 'masa',
    weekday: 'día',
    rest: 'resto del día',
    asked: 'pedidas al día',
    board: 'falló la pizarra por',
    lastWeek: 'la semana anterior por',
    lastFour: 'la media de cuatro por',
    inside: 'dentro del margen 8 de 10',
  },
  hint: 'Piezas de media. La más cercana de las tres va en negrita.',
  number: roughly,
  inside: ({ hits, of }) => (of === 0 ? '–' : `${Math.round((100 * hits) / of)} %`),
  look: (name) => `Mirar los pronósticos de ${name}`,
  measures: 'Medidas para quien las conoce',
  measuresHint:
    'WAPE: todos los errores entre todas las piezas. MASE: errores entre los del mismo día de la semana anterior, antes. Pinball: pérdida media de los cuantiles 50, 80 y 90 %, en piezas.',
  measureColumns: { wape: 'WAPE', mase: 'MASE', pinball: 'pinball' },
}

const COST: CostWords = {
  title: (days) =>
    days === 0 ? 'Lo que costó hacer de más y de menos' : `Lo que costó hacer de más y de menos en ${days} días`,
  hint: 'Las piezas que sobran cuestan lo que llevan, menos lo que dan las del día anterior. Las ventas perdidas cuestan lo que habrían dado, y el disgusto. El consejo y las formas simples se calculan como si todo hubiera estado a tiempo, lo que ningún día de horno es del todo. Un menos dice que dieron más de lo que costaron.',
  none: 'Todavía no hay un día del que decirlo.',
  unknownBaked: 'De pocos días consta lo que se horneó; solo lo que se vendió.',
  way: {
    baked: 'como se horneó',
    advised: 'como habría aconsejado la pizarra',
    lastWeek: 'lo que vendió el mismo día de la semana anterior',
    lastFour: 'lo que vendieron los últimos cuatro',
  },
  columns: {
    way: 'horneado',
    left: 'sobraron',
    leftCost: 'costo',
    lost: 'ventas perdidas',
    lostCost: 'costo',
    sum: 'en total',
  },
  words: (baked, advised) =>
    baked === null
      ? `Con el consejo de la pizarra habría sido ${advised}.`
      : `Como se horneó fue ${baked}; con el consejo de la pizarra habría sido ${advised}.`,
}

const OVERRIDES: OverrideWords = {
  title: 'Donde usted dijo otra cosa',
  none: 'Para estos días no se escribió nada distinto del consejo. Cuando se haga, aquí se compararán ambos con lo pedido.',
  summary: (changed, nearer, farther) =>
    `${changed} ${changed === 1 ? 'vez' : 'veces'} se escribió otra cosa: ${nearer} más cerca de lo pedido que el consejo, ${farther} más lejos.`,
  columns: {
    day: 'día',
    what: 'qué',
    advised: 'aconsejado',
    typed: 'escrito',
    asked: 'pedido',
    nearer: 'más cerca',
  },
  nearer: ({ advised, typed, asked }) => {
    const [board, you] = [Math.abs(advised - asked), Math.abs(typed - asked)]
    return board === you ? 'ninguno' : board < you ? 'el consejo' : 'usted'
  },
  estimated: 'unas',
}
