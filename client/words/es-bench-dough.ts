import type { BenchWords } from './bench.ts'
import type {
  BatchWords,
  DividerWords,
  MixWords,
  PreparationWords,
  RoomSentences,
  ShapeWords,
  TempWords,
} from './bench-dough.ts'
import { unbroken } from './joined.ts'

export function esBenchDough(words: BenchWords): RoomSentences {
  const { times } = words
  return {
    title: 'Obrador',
    back: 'Volver al obrador',
    backOne: 'Atrás',
    way: {
      scale: 'Báscula',
      mixer: 'Amasadora',
      bench: 'Mesa',
      proof: 'Leudado',
      cooler: 'Cámara',
      nothing: 'nada aquí',
      nothingDue: 'nada pendiente',
      nothingPlanned: 'sin amasijos: se planean en el escritorio',
      noRoom: 'La tienda aún no tiene fórmulas. Escríbalas en el escritorio.',
      line: 'El camino de la masa',
      trays: (trays, most) => (most === null ? `${trays} bandejas` : `${trays} de ${most} bandejas`),
      more: (count) => `y ${count} más`,
    },
    acts: {
      begin: (name) => `Preparar ${name}`,
      feed: (name) => `Alimentar ${name}`,
      mix: (name) => `Amasar ${name}`,
      mixIn: (name) => `Añadidos a ${name}`,
      mixerOff: (name) => `Parar amasadora: ${name}`,
      restOver: (name) => `Fin del reposo: ${name}`,
      fold: (n, of, name) => `Plegar ${n} de ${of}: ${name}`,
      bulkOver: (name) => `Fin del bloque: ${name}`,
      chill: (name) => `Enfriar ${name}`,
      use: (name) => `Usar primero: ${name}`,
    },
    mix: mix(words),
    temps: temps(),
    shape: shape(words),
    batch: batch(words),
    made: made(words),
    readings: {
      title: 'Temperaturas',
      places: { room: 'Sala', cooler: 'Cámara', flour: 'Harina', tap: 'Agua del grifo' },
      readAt: (text, atMs) => `${text} ${times.at(atMs)}`,
      assumed: (text) => `supuesto ${text}`,
      hint: 'Los relojes de leudado y frío siguen la sala y la cámara.',
    },
    divider: divider(),
    pad: { save: 'Guardar', clear: 'Borrar', back: '⌫', typeFirst: 'escriba primero' },
  }
}

function mix({ times }: BenchWords): MixWords {
  return {
    name: (formula, nth, of) => (of > 1 ? `${formula} ${nth} de ${of}` : formula),
    stage: (stage) =>
      ({
        planned: 'por pesar',
        mixing: 'amasando',
        rest: 'en reposo',
        bulk: 'en bloque',
        bulkChill: 'en bloque, en frío',
        bench: 'dividir y formar',
        ended: 'terminado',
      })[stage],
    forDate: (date) => `para ${times.date(date)}`,
    start: (atMs) => `empezar ${times.at(atMs)}`,
    weighed: (done, of) => `${done} de ${of} pesados`,
    allWeighed: 'todo pesado',
    lineWeighed: 'Pesado',
    notWeighed: 'No estaba pesado',
    mixIn: 'añadido',
    unripe: (atMs) => `no madura antes de las ${times.clock(atMs)}`,
    noneMade: 'sin preparar',
    startMixing: 'Arrancar la amasadora',
    toWeigh: (lines) => (lines === 1 ? '1 línea sin pesar' : `${lines} líneas sin pesar`),
    mixerOff: 'Parar la amasadora',
    mixInsAt: (atMs) => `añadidos ${times.at(atMs)}`,
    mixInsNow: 'añadidos ahora',
    onToRest: 'Al reposo',
    onToBulk: 'A leudar en bloque',
    onToBulkChill: 'En bloque a la cámara',
    onToBench: 'A la mesa',
    backTo: 'Un paso atrás',
    fold: (n, of) => `Plegado ${n} de ${of}`,
    foldAt: (n, atMs) => `plegado ${n} ${times.at(atMs)}`,
    doughRead: (read, wished) => `masa ${read}, deseada ${wished}`,
    notTaught: 'este amasijo no enseñó fricción: faltó leer harina, sala o agua',
    friction: (by, mixes) =>
      mixes === 0
        ? `la amasadora calienta ${by}`
        : `la amasadora calienta ${by}, de ${mixes} ${mixes === 1 ? 'amasijo' : 'amasijos'}`,
    gone: 'Este amasijo ya terminó.',
    caution:
      'La pizarra es una ayuda, no un dispositivo de seguridad: mantenga manos y paños fuera de la amasadora en marcha.',
  }
}

function temps(): TempWords {
  return {
    names: { room: 'Sala', flour: 'Harina', preferment: 'Prefermento', tap: 'Grifo', water: 'Agua', dough: 'Masa' },
    assumed: (text) => `supuesto ${text}`,
    notRead: 'sin medir',
    water: (degrees) => `a ${degrees}`,
    ice: (weight) => `+ ${weight} de hielo`,
    reach: (reach, dough) =>
      ({
        reached: '',
        needsWarm: 'calentar el agua',
        tooCold: `Ningún agua es tan fría: la masa queda a ${dough}`,
        tooWarm: `Ningún agua puede ser tan caliente: la masa queda a ${dough}`,
      })[reach],
    unknown: 'Aún sin temperatura del agua: mida harina, sala y grifo.',
  }
}

function shape({ line }: BenchWords): ShapeWords {
  return {
    left: (pieces, weight) => `quedan unas ${pieces} piezas, ${weight}`,
    leftWeight: (weight) => `quedan ${weight}`,
    gives: (pieces, dough) => `previstas: ${pieces} ${dough}`,
    by: { divider: 'con divisora', hand: 'a mano' },
    piece: (weight) => `${weight} la pieza`,
    put: (pieces, dough) => `${pieces} ${dough} a bandejas`,
    thatIsAll: 'A bandejas, y es todo',
    restLost: (weight) => (weight === null ? 'no queda nada' : `${weight} que quedan cuentan como perdidos`),
    stillToCome: (names) => `falta ${line.list(names)}`,
    nothingMore: 'No sale más',
    spoilt: 'Lo que queda se estropeó',
    place: 'Carro y nivel',
    noPlace: 'sin decir',
    placeHint: 'Carro y nivel, como 2-7',
    noDough: 'Ninguna masa de la configuración se forma de esta fórmula.',
    check: 'Control de la divisora',
  }
}

function batch({ times }: BenchWords): BatchWords {
  return {
    chill: 'A la cámara',
    passed: 'Prueba de flotación o dedo superada',
    notReady: 'Aún no',
    place: 'Carro y nivel',
    partOrWaste: 'Una parte, o estropeadas',
    proof: (until, nowMs) => {
      if (until === null) return ''
      if (nowMs > until.latestAtMs) return `pasadas ${times.since(until.latestAtMs)}`
      if (nowMs >= until.targetAtMs) return `listas, enfriar ${times.by(until.latestAtMs)}`
      return `listas ${times.at(until.targetAtMs)}`
    },
    chilled: (until, nowMs) => {
      if (until === null) return ''
      if (nowMs > until.latestAtMs) return `pasadas ${unbroken(times.span(nowMs - until.latestAtMs))}`
      if (nowMs < until.earliestAtMs) return `hervir desde las ${times.clock(until.earliestAtMs)}`
      return `hervir en ${unbroken(times.left(until.latestAtMs - nowMs))}`
    },
    gone: 'Estas piezas ya pasaron a otro sitio.',
    at: (place) => `carro ${place}`,
  }
}

function made({ times }: BenchWords): PreparationWords {
  return {
    title: 'Preparaciones',
    nothing: 'Nada que preparar ni alimentar hoy.',
    made: 'Hecho',
    fed: 'Alimentada',
    forDate: (weight, date) => `${weight} para ${times.date(date)}`,
    seed: (weight) => `${weight} de la madura`,
    other: 'Otro peso',
    ripe: (atMs, latestAtMs, nowMs) => {
      if (nowMs > latestAtMs) return `fuera de plazo, ${times.late(nowMs - latestAtMs)}`
      return nowMs < atMs ? `madura en ${times.left(atMs - nowMs)}` : `madura, usar ${times.by(latestAtMs)}`
    },
    drop: 'Tirado',
  }
}

function divider(): DividerWords {
  return {
    title: 'Control de la divisora',
    whichDough: 'Qué masa se pesa',
    should: (weight) => `una pieza debe pesar ${weight}`,
    weighed: (weights) => `pesadas: ${weights.join(', ')}`,
    add: 'Añadir la pieza',
    save: (pieces) => `Guardar ${pieces} ${pieces === 1 ? 'pieza' : 'piezas'}`,
    nothing: 'Ninguna masa tiene peso por pieza: escríbalo en el escritorio.',
    mean: (by, isHeavy) => `${by} de ${isHeavy ? 'más' : 'menos'} en promedio`,
    spread: (by) => `dispersión ${by}`,
    drift: (by, isMore) => `${by} ${isMore ? 'más' : 'menos'} por hora`,
    code: (code) =>
      ({
        tooFew: 'pocas piezas para decir más',
        onWeight: 'en su peso',
        heavy: 'ajustar la divisora a menos',
        light: 'ajustar la divisora a más',
        spread: 'las piezas difieren mucho',
        risingWeight: 'las piezas pesan cada vez más',
        fallingWeight: 'las piezas pesan cada vez menos',
      })[code],
    verdict: (verdict, label) =>
      ({
        passes: `etiqueta ${label}: se cumple`,
        failsAverage: `etiqueta ${label}: poco peso en promedio`,
        failsPackages: `etiqueta ${label}: piezas sueltas con poco peso`,
        failsBoth: `etiqueta ${label}: poco peso, en promedio y sueltas`,
        tooFew: `etiqueta ${label}: pese 12 al menos`,
        notInTable: `etiqueta ${label}: no está en la tabla`,
      })[verdict],
    office: 'Según NIST Handbook 133, una ayuda: consulte a su oficina de pesas y medidas.',
  }
}
