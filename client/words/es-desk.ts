import type { BatchStage } from '../../shared-core/shop/shop.ts'
import type {
  AccountWords,
  DayWords,
  DeskDoneWords,
  DeskSentences,
  DistanceWords,
  DryWords,
  LoadsWords,
  MistakeWords,
  ScreensWords,
  SetUpWords,
  TraysWords,
} from './desk.ts'
import { esToday } from './es-desk-today.ts'
import type { Words } from './words.ts'

export function esDesk(words: Words): DeskSentences {
  const { times, line } = words
  return {
    title: 'Escritorio',
    places: {
      today: 'Hoy',
      orders: 'Pedidos',
      loads: 'Cargas y bandejas',
      coming: 'Días que vienen',
      plan: 'Plan',
      dough: 'Obrador',
      close: 'Cierre',
      past: 'Días pasados',
      history: 'Ventas y pronósticos',
      salesIn: 'Ventas de la caja',
      setUp: 'Configuración',
      screens: 'Pantallas',
    },
    placesName: 'Lugares del escritorio',
    waitsFor: (count) => `${count} ${count === 1 ? 'espera' : 'esperan'} respuesta`,
    late: {
      waiting: 'Trayendo esta página…',
      failed: 'No se pudo traer esta página. Inténtelo cuando haya contacto.',
      again: 'Intentar otra vez',
    },
    today: esToday(words),
    titles: {
      day: 'El día',
      loads: 'Lista de cargas',
      trays: 'Bandejas',
      done: 'Lo que se hizo',
      dry: 'Manos secas',
      screens: 'Pantallas',
      distance: 'Distancia de la pared',
      cautions: 'Cuidados',
    },
    day: day(times, line),
    account: ACCOUNT,
    loads: LOADS,
    mistakes: mistakes(line),
    trays: TRAYS,
    setUp: SET_UP,
    screens: screens(times),
    done: DONE,
    dry: DRY,
    distance: DISTANCE,
    halfDays: { am: 'a. m.', pm: 'p. m.' },
    looking: 'Buscando el local…',
    noSetUp: 'Aquí todavía no hay un local. Suba un archivo de configuración más abajo.',
    language: 'Idioma',
    putAway: 'Quitar aviso',
    refused: (count) => `${count} rechazados`,
  }
}

function day(times: Words['times'], line: Words['line']): DayWords {
  return {
    open: (label, atMs) => `Abierto ${times.since(atMs)}: ${times.date(label)}`,
    notOpen: 'No hay día abierto. Lo abre la primera acción de la mañana.',
    openIt: 'Abrir el día',
    goClose: 'Ir al cierre',
    overdue: (label) => `El ${times.date(label)} no se cerró. Ciérrelo, o lo cerrará la primera acción de la mañana.`,
    closeAll: (pieces) => `¿Cerrar el día? Todavía hay ${line.pieces(pieces)} en la olla, en tablas o en el horno.`,
    accounted: 'Todas las piezas están en la cuenta.',
    gap: (dough, pieces) => `${dough}: ${line.pieces(pieces)} sin lugar en la cuenta. Es una falla del tablero.`,
    last: (label, atMs) => `Último cierre: ${times.date(label)}, ${times.at(atMs)}`,
    nothingLeft: 'nada',
  }
}

const ACCOUNT: AccountWords = {
  title: 'Dónde está cada pieza',
  columns: {
    dough: 'Masa',
    shaped: 'formados',
    carriedIn: 'ya estaban',
    onTheLine: 'en la línea',
    forSale: 'fuera',
    kept: 'apartados',
    sold: 'vendidos',
    kitchen: 'cocina',
    wasted: 'basura',
    given: 'regalados',
    dayOld: 'de ayer',
    unexplained: 'sin explicar',
    carriedOn: 'siguen',
  },
  rule: 'Formados y ya estaban = en la línea + fuera (a la venta o enfriando) + apartados + vendidos + cocina + basura + regalados + de ayer + sin explicar.',
  total: 'Todos',
  unexplainedHint: 'Sin explicar: + si al contar había menos, − si aparecieron más.',
}

const LOADS: LoadsWords = {
  typed: 'Escribirla',
  typedHint:
    'Una carga por renglón: hora, piso y variedades con sus piezas. Hora y piso pueden faltar; de tarde, 9:10 p. m. o 21:10.',
  example: '5:10 1 Ajonjolí 36, Amapola 24',
  take: 'Tomar esta lista',
  file: 'Subir un archivo',
  fileHint: 'CSV con las columnas in, shelf, variety, pieces; o JSON.',
  taken: (loads) => `Tomada: ${loads} ${loads === 1 ? 'carga' : 'cargas'}.`,
  replaces: 'Una lista nueva reemplaza las cargas que faltan.',
  planned: 'Cargas previstas',
  none: 'No hay cargas previstas.',
  columns: { in: 'entra', shelf: 'piso', contents: 'qué', state: 'estado' },
  anyShelf: 'cualquiera',
  whenFree: 'cuando haya piso libre',
  inOn: (clock, day) => `${clock}, para el ${day}`,
  done: 'hecha o saltada',
  toCome: 'por venir',
  leaveOut: 'Saltar',
}

function mistakes(line: Words['line']): MistakeWords {
  return {
    title: (count) => `${count} ${count === 1 ? 'error' : 'errores'}; no se tomó nada.`,
    line: (number) => `Renglón ${number}`,
    wholeFile: 'El archivo',
    right: 'Lo correcto sería',
    notJson: 'Esto no es JSON válido.',
    notJsonRight: 'Un archivo de configuración como el que se descarga aquí.',
    noContact: 'No se pudo llegar al servidor. Inténtelo cuando haya contacto.',
    empty: 'La lista está vacía.',
    unreadable: (text) => `«${text}» no es una variedad con su número de piezas.`,
    unreadableRight: 'Una variedad y sus piezas, separadas por comas: Ajonjolí 36, Amapola 24.',
    unknownVariety: (name) => `El local no tiene la variedad «${name}».`,
    unknownShelf: (name) => `El horno no tiene el piso «${name}».`,
    oneOf: (names) => (names.length === 1 ? `¿${names.join('')}?` : `Uno de estos: ${names.join(', ')}.`),
    notATime: (text) => `«${text}» no es una hora.`,
    timeRight: 'Horas y minutos: 5:10 a. m., 9:10 p. m. o 21:10.',
    tooMany: (pieces) => `${line.pieces(pieces)} de una variedad en una carga son demasiadas.`,
    tooManyRight: 'Un número entero de 1 a 5000.',
  }
}

const STAGES: { readonly [stage in BatchStage]: string } = {
  proof: 'leudando',
  chill: 'en frío',
  rack: 'en el carro',
  kettle: 'en la olla',
  boards: 'en tablas',
  oven: 'en el horno',
}

const TRAYS: TraysWords = {
  how: 'Qué',
  carriedIn: 'Ya estaban',
  carriedInHint: 'Bandejas que estaban antes que el tablero.',
  shaped: 'Recién formados',
  shapedHint: 'Piezas divididas y formadas ahora.',
  dough: 'Masa',
  where: 'Dónde',
  stage: (stage) => STAGES[stage],
  number: 'Cuántas',
  unit: 'en',
  pieces: 'piezas',
  traysOf: (pieces) => `bandejas de ${pieces}`,
  since: 'Ahí desde',
  today: 'hoy',
  yesterday: 'ayer',
  dayBefore: 'anteayer',
  notKnown: 'no se sabe',
  now: 'ahora',
  clock: 'a las',
  carryIn: (pieces, name) => `Anotar ${pieces} ${name}`,
  shape: (pieces, name) => `Formados ${pieces} ${name}`,
  chooseNumber: 'Diga cuántas: un número entero de 1 a 5000 piezas.',
  notLater: 'Esa hora todavía no llega.',
  standing: 'Lo que está antes de la olla',
  nothing: 'No hay nada leudando, en frío ni en el carro.',
  untilOn: (clock, day) => `${day}, ${clock}`,
  columns: { where: 'dónde', what: 'qué', pieces: 'piezas', since: 'desde', until: 'bien hasta' },
}

const SET_UP: SetUpWords = {
  upload: 'Subir una configuración',
  schema: 'Forma del archivo (JSON Schema)',
  taken: 'Se tomó la configuración.',
}

function screens(times: Words['times']): ScreensWords {
  return {
    role: { wall: 'Pared', bench: 'Línea', counter: 'Mostrador', desk: 'Escritorio' },
    connected: 'conectada',
    lastSeen: (atMs) => `vista por última vez ${times.at(atMs)}`,
    thisOne: 'esta',
    none: 'Todavía no se vio ninguna pantalla.',
    columns: { name: 'nombre', role: 'qué es', station: 'puesto', state: 'enlace' },
    allStations: 'todos',
    listName: 'Pantallas y cuándo se vieron',
    localHint:
      '«localhost» solo sirve en esta computadora. Para otros aparatos use la dirección que Boilboard escribe al arrancar.',
    name: 'Nombre de esta pantalla',
    nameHint: 'p. ej. Escritorio de la oficina',
  }
}

const DONE: DeskDoneWords = {
  nothing: 'Todavía no se hizo nada.',
  here: 'esta pantalla',
  takeBack: 'Deshacer',
  older: 'Solo se muestran las últimas acciones.',
}

const DRY: DryWords = {
  nothing: 'No hay nada por confirmar.',
  right: 'Está bien',
  allRight: 'Todo está bien',
}

const DISTANCE: DistanceWords = {
  hint: 'Desde dónde se lee una pared depende de su tamaño: acciones y cuentas necesitan 22 minutos de arco.',
  diagonal: 'Diagonal, pulgadas',
  widthPx: 'Píxeles de ancho',
  heightPx: 'Píxeles de alto',
  metres: 'Distancia, metros',
  supported: (farthestM) => `Sí: esa pared se lee hasta a ${farthestM} m.`,
  notSupported: (farthestM) => `No: esa pared se lee hasta a ${farthestM} m. Ponga una más grande, o más cerca.`,
  impossible: 'Los cuatro son números mayores que 0.',
  tableDiagonal: 'Diagonal',
  tableFarthest: 'se lee hasta',
}
