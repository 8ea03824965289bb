import type { BatchStage } from '../../shared-core/shop/shop.ts'
import type {
  BenchSentences,
  ContentsWords,
  DoneWords,
  MoreWords,
  PiecesWords,
  SheetWords,
  ShelfWords,
  StationWords,
  TopWords,
} from './bench.ts'
import type { Words } from './words.ts'

export function esBench(words: Words): BenchSentences {
  const { times, line } = words
  return {
    top: top(times),
    station: station(words),
    shelf: shelf(),
    sheet: sheet(),
    contents: contents(line),
    pieces: pieces(),
    more: more(),
    done: done(times),
  }
}

const INTO: { readonly [stage in BatchStage]: string } = {
  proof: 'a leudar',
  chill: 'al frío',
  rack: 'al carro',
  kettle: 'a la olla',
  boards: 'a las tablas',
  oven: 'al horno',
}

function top(times: Words['times']): TopWords {
  return {
    lastLoad: (atMs) => `última carga ${times.by(atMs)}`,
    ruler: {
      lastLoad: () => 'última carga',
      lastLoadGone: 'no hay más cargas',
      closedToday: 'hoy cerrado',
      changeover: 'cambio',
      tooLate: (atMs) => `carga ${times.clock(atMs)} tarde`,
    },
    loadsToGo: (loads) =>
      loads === 0
        ? 'no faltan cargas'
        : `${loads === 1 ? 'falta' : 'faltan'} ${loads} ${loads === 1 ? 'carga' : 'cargas'}`,
    demo: 'Demo',
    linked: 'en línea',
    device: 'tableta de la mesa',
    day: 'El día',
    coming: 'Ya voy',
    waiting: 'Buscando la tienda …',
    noShop: 'La tienda aún no tiene configuración. Cárguela en el escritorio o al iniciar.',
    pedalTooSoon: 'No se hizo: la pizarra acababa de cambiar. Pise otra vez.',
    pedalNothing: (name) => `${name}: nada que hacer aquí`,
    touchForSound: 'toque para el sonido',
    others: (count) => `+${count}`,
  }
}

function station({ times, line }: Words): StationWords {
  return {
    rack: 'Carro y frío',
    kettle: 'Olla',
    boards: 'Tablas',
    oven: 'Horno: una tecla por piso',
    ovenInTurn: 'Horno: el marco indica la puerta',
    hearth: 'Solera: una tecla por carga',
    empty: 'vacío',
    next: (dough, count) => `sigue ${dough} ${count}`,
    becomes: (what, count) => `${count === 1 ? 'será' : 'serán'} ${what}`,
    freePieces: (lines) => `Piezas libres: ${line.becomes(lines)}`,
    forAfternoon: 'faltan para la tarde',
    goneNow: 'no hay',
    goneElse: (atMs) => `si no, acaba ${times.clock(atMs)}`,
    amount: (dough, count) => `${dough} ${count}`,
    nothingPlanned: 'nada previsto',
    notReady: (atMs) => `no está, mirar ${times.at(atMs)}`,
    boilBy: (atMs) => `lista, hervir ${times.by(atMs)}`,
    ready: 'lista',
    past: (atMs) => `pasada ${times.since(atMs)}`,
    boardsNow: (free, out) => `${free} mojadas, ${out} fuera`,
    boardsWetting: (boards) => `${boards} mojándose`,
    boardsOver: (boards) => `${boards === 1 ? 'falta' : 'faltan'} ${line.boards(boards)}`,
    andMore: (count) => `y ${count} más`,
    line: 'La línea',
  }
}

function shelf(): ShelfWords {
  return {
    differs: 'otra cosa',
    differsOf: (name) => `${name}: otra cosa`,
    ofLoad: (verb, what) => `${verb.charAt(0).toUpperCase()}${verb.slice(1)} ${what}`,
    chooseWhat: 'elegir qué',
    bakesFor: (marks) => `hornea para ${marks.join(', ')}`,
    unconfirmed: 'sin confirmar',
    atDoor: 'en la puerta',
    toTop: (varieties) => `luego cubrir: ${varieties.join(', ')}`,
    topNow: (varieties) => `cubrir ya: ${varieties.join(', ')}`,
    kinds: (count, kinds) => `${count}, ${kinds} clases`,
    more: (count) => `+${count}`,
    touchWhatDiffers: 'Toque lo que es otra cosa',
  }
}

function sheet(): SheetWords {
  return {
    back: 'Volver a la línea',
    earlier: 'antes',
    further: 'más',
    page: (page, pages) => `${page} de ${pages}`,
    least: 'mínimo',
    most: 'máximo',
    less: (name, step) => `${step} ${name} menos`,
    plus: (name, step) => `${step} ${name} más`,
  }
}

function contents(line: Words['line']): ContentsWords {
  return {
    before: (name) => `Cargar ${name}: qué entra`,
    inside: (name) => `Piso ${name}`,
    varieties: 'Variedades',
    loadList: 'Lista',
    whatIsIn: 'Qué hay',
    someOut: 'Sacar parte',
    move: 'Mover',
    dropped: 'Se cayó',
    touchToAdd: 'Toque una variedad: una tabla más. Toque una línea y luego una variedad: se vuelve esa.',
    becomes: (variety) => `${variety} se vuelve …`,
    nothingYet: 'Nada elegido todavía',
    sum: (count, most, boards) =>
      `${most === null ? '' : `${count} de `}${line.pieces(most ?? count)}, ${line.boards(boards)}`,
    thatIsIn: 'Eso es lo que hay',
    unchanged: 'sin cambios',
    nothingPlanned: 'No hay otra carga en la lista.',
    outOf: 'Sacar ahora',
    ofAll: (count, all) => `${count} de ${all}`,
    toShelf: (name) => `Al piso ${name}`,
    taken: 'ocupado',
    backToFirstSide: 'Volver al primer lado',
    onToSecondSide: 'Segundo lado, sin voltear',
    backOntoBoards: 'De vuelta a las tablas',
    loadGone: 'Esta carga ya salió.',
  }
}

function pieces(): PiecesWords {
  return {
    pull: 'Traer bandejas',
    dip: 'Hervir',
    board: 'A tablas',
    carryIn: 'Bandejas ya hechas',
    shape: 'Formado ahora',
    put: (count, dough, stage) => `${count} ${dough} ${INTO[stage]}`,
    proofing: (count) => `${count} leudando`,
    number: { one: 'pieza', many: 'piezas' },
    hours: { one: 'hora ahí', many: 'horas ahí' },
  }
}

function more(): MoreWords {
  return {
    title: 'Más',
    unplanned: 'Carga no prevista',
    unplannedDetail: 'elegir piso y variedades',
    carryInDetail: 'estaban en el frío o en el carro',
    shapeDetail: 'a leudar o al frío',
    line: 'En la línea',
    lineDetail: 'partir, mover, se cayó',
    doughRoom: 'Obrador',
    doughRoomDetail: 'amasijos, leudado, frío',
    kitchen: 'Cocina',
    kitchenDetail: 'por pedido, segundo menú',
    skip: 'Omitir una carga',
    skipDetail: 'de la lista de cargas',
    settings: 'Ajustes',
    notFetched: 'Esto viene del servidor y no hay contacto. Se abrirá cuando vuelva.',
    otherDough: 'otra masa o cantidad',
    whichShelf: 'Qué piso',
    whichLoad: 'Qué carga se omite',
    nothingOnLine: 'No hay nada en la línea.',
    nothingToSkip: 'No falta ninguna carga.',
    batch: (count, name, stage) => `${count} ${name} ${STANDS[stage]}`,
    onTo: (stage) => `Pasar ${INTO[stage]}`,
    backTo: (stage) => `Volver ${INTO[stage]}`,
    wasted: (count) => `Caído o echado a perder: ${count}`,
    batchGone: 'Estas piezas ya pasaron.',
    howMany: 'Cuántas',
  }
}

const STANDS: { readonly [stage in BatchStage]: string } = {
  proof: 'leudando',
  chill: 'en frío',
  rack: 'en el carro',
  kettle: 'en la olla',
  boards: 'en tablas',
  oven: 'en el horno',
}

function done(times: Words['times']): DoneWords {
  return {
    title: 'Lo que se hizo',
    nothingHere: 'nada hecho aquí todavía',
    nothingYet: 'nada aún',
    notThis: 'esto no',
    takenBack: (what) => `deshecho: ${what}`,
    others: 'deshacer otras cosas',
    outOfWindow: ({ limit, byMs }) =>
      `${times.span(byMs)} ${limit === 'too-early' ? 'antes de tiempo' : 'después de su tiempo'}`,
    nothing: 'Todavía no se ha hecho nada.',
    here: 'esta pantalla',
    dryHands: 'Manos secas',
    toConfirm: (count) => `${count} por confirmar`,
    nothingToConfirm: 'nada por confirmar',
    allRight: 'Todo está bien',
    right: 'Está bien',
    putAway: 'Guardar',
    lookAt: 'otra cosa',
  }
}
