import type { SetUpFields } from './set-up-fields.ts'
import type { KitchenSetUpWords } from './set-up-kitchen.ts'

export const ES_KITCHEN_FIELDS: Pick<SetUpFields, 'orders' | 'kitchenStation' | 'portion' | 'menuItem' | 'run'> = {
  orders: {
    dozenPieces: 'Piezas de una docena',
    cutOffMinute: 'Pedidos para el día siguiente hasta',
    walkInPercent: 'Para quien entra, % de lo que se va a pedir',
    walkInLeast: 'Para quien entra, de cada variedad al menos',
    keepsAsTheyCome: 'Apartar piezas para los pedidos al salir del horno',
    noShowMs: 'Sin recoger: termina después de',
    forgetDays: 'Nombres, números y notas se borran después de, días',
    madeInMs: 'Hecho al momento en',
    sliceCoolMs: 'Enfriado antes de rebanar',
    packMs: 'Empacar una docena',
    boxPieces: 'Piezas de una caja',
  },
  kitchenStation: { name: 'Nombre', hands: 'Cuántos a la vez, a mano' },
  portion: {
    name: 'Nombre',
    contains: 'Contiene',
    pullMs: 'Sale del frío antes del cambio por',
    trayPortions: 'Porciones por bandeja',
  },
  menuItem: {
    name: 'Nombre',
    priceCents: 'Precio',
    onBagel: 'Va en un bagel',
    canToast: 'Se puede tostar',
    portions: 'Porciones que lleva',
    steps: 'Cómo se hace',
  },
  run: {
    name: 'Nombre',
    leavesMinute: 'Sale a las',
    stopMs: 'De parada a parada',
    loadMs: 'Cargar la camioneta',
  },
}

export const ES_KITCHEN: KitchenSetUpWords = {
  does: {
    dozenPieces: 'Cuántas piezas son una docena que alguien pide.',
    cutOffMinute: 'Más tarde se pueden tomar todavía, a sabiendas. Sin decir: hasta que abre el local.',
    walkInPercent: 'Un pedido se promete solo con lo que pasa de esto. Menos: más promesas, y varillas más vacías.',
    walkInLeast: 'Por pocas que se vayan a pedir.',
    keepsAsTheyCome: 'Primero para lo que se entrega antes. Apagado: las aparta alguien a mano.',
    noShowMs: 'Nadie vino hasta entonces: lo apartado vuelve a la venta. Sin decir: al cerrar.',
    forgetDays: 'Desde el día del pedido. El pedido queda en los registros, sin ellos.',
    madeInMs: 'Lo que el mostrador dice a quien espera, y con lo que la cocina va tarde.',
    sliceCoolMs: 'Un bagel caliente se rompe bajo el cuchillo y suda en la bolsa cerrada.',
    packMs: 'Rebanarla, embolsarla y ponerla en cajas. Con esto se empieza a empacar antes de que salga la camioneta.',
    boxPieces: 'La lista para empacar cuenta las cajas con esto.',
  },
  dozen: (pieces) => (pieces === 13 ? '13, docena de panadero' : String(pieces)),
  heads: {
    taking: 'Tomar pedidos',
    walkIns: 'Quien entra',
    keeping: 'Apartar y entregar',
    packing: 'Empacar',
    waiting: 'Hecho al momento',
    details: 'Nombres y números',
    stations: 'Puestos de la cocina',
    portions: 'Porciones preparadas',
  },
  handsHint: 'Cuántas cosas pueden estar allí en marcha a la vez. Lo que se hornea cuenta por los lugares del horno.',
  handsLine: (hands) => `${hands} a la vez`,
  pullHint: 'Cuánto está fuera del frío antes del segundo menú. Sin decir: no hace falta sacarla.',
  trayHint: 'Se saca de bandeja en bandeja.',
  portionLine: (pull, tray) => [...(pull === null ? [] : [`sale ${pull} antes`]), `bandejas de ${tray}`].join(', '),
  slotsHint: 'Lugares del segundo menú en él, uno por pan plano. 0: el segundo menú no lo usa.',
  slotsLine: (slots) => `${slots} ${slots === 1 ? 'lugar' : 'lugares'}`,
  item: {
    asItIs: 'se entrega como está',
    onBagelHint: 'Gasta un bagel de la variedad que se pide.',
    portionsHint: 'Lo que lleva uno se descuenta con cada uno que se empieza.',
    noPortions: 'Todavía no hay porciones: están en la página de la cocina.',
    portion: (portions, name) => (portions === 1 ? name : `${portions} ${name}`),
    remove: (what) => `Quitar ${what}`,
    stepsHint: 'Tres partes a lo más, una tras otra. Sin ninguna se entrega como está: un pote, una botella.',
    noStations: 'La cocina no tiene puestos todavía: dígalos primero en la página de la cocina.',
    step: (no) => `Parte ${no}`,
    removeStep: (no) => `Quitar la parte ${no}`,
    addStep: 'Añadir una parte',
    earlier: (no) => `Parte ${no} antes de la parte ${no - 1}`,
    station: 'Dónde',
    made: 'Se hace',
    takes: 'Tarda',
    how: { byHand: 'a mano', inOven: 'en el horno' },
    slots: 'Lugares de un piso',
    noSlots: 'Ningún piso tiene lugares todavía: dígalos en la página del horno.',
    bakesAt: 'Se hornea a',
    bakesAtHint: 'Sin decir: como el segundo menú.',
    what: { turn: 'girarlo', move: 'moverlo' },
    addTurn: 'Añadir un giro o un cambio de lugar',
    after: (no) => `Después de (${no})`,
    done: (no) => `Qué se hace (${no})`,
    turn: (no) => `giro ${no}`,
    contains: (allergens) => `Por sus porciones contiene: ${allergens}.`,
    onBagelToo: 'Se suma lo que contiene el bagel.',
    stepSaid: (station, takes, oven) => {
      const more = oven === null ? [] : [...(oven.slots === 1 ? [] : [`${oven.slots} lugares`]), ...oven.turns]
      return `${station} ${takes}${more.length === 0 ? '' : ` (${more.join(', ')})`}`
    },
    turnSaid: (what, after) => `${what === 'turn' ? 'girar' : 'mover'} a los ${after}`,
  },
  runLine: (clock, stop) => `sale ${clock}, ${stop} de parada a parada`,
  stopHint: 'Y del local a la primera.',
  loadHint: 'La última caja está lista tanto antes de que salga.',
  sums: {
    orders: (dozen, made) => `una docena son ${dozen}, hecho al momento en ${made}`,
    kitchen: (stations, portions) =>
      `${stations} ${stations === 1 ? 'puesto' : 'puestos'}, ${portions} ${portions === 1 ? 'porción' : 'porciones'}`,
  },
}

const NAME = 'Otro en uso se llama igual. Póngale un nombre propio.'

export const ES_KITCHEN_MISFITS: Readonly<Record<string, string>> = {
  'kitchenStation/name': NAME,
  'portion/name': NAME,
  'portion/contains': 'Cada alérgeno una vez.',
  'menuItem/name': NAME,
  'menuItem/portions': 'Sus porciones están en uso, cada una nombrada una vez. Devuelva una al uso, o quítela aquí.',
  'menuItem/canToast': 'Lo que se tuesta va en un bagel.',
  'menuItem/steps':
    'Cada parte se hace en un puesto en uso. Los giros van en orden y antes de que salga, y ninguna parte pide más lugares de los que tiene un piso.',
  'run/name': NAME,
  'run/leavesMinute': 'Sale cuando el horno ya está listo, y a más tardar al cerrar.',
}
