import type { CareKind } from '../../shared-core/day/said.ts'
import type { MixStage } from '../../shared-core/dough/mix.ts'
import { joined, listed } from './joined.ts'
import type { TellingParts, Tellings } from './told-parts.ts'
import { tellWith } from './told-parts.ts'
import type { Speech, ToldWords } from './words.ts'

export function esTold(speech: Speech, parts: TellingParts): ToldWords {
  const did: ToldWords['did'] = (told) => tellWith(TELLINGS, told, speech, parts)
  return { did, at: (told, atMs) => joined(speech.localTime(atMs), did(told)), takeBack: 'Deshacer' }
}

const TELLINGS: Tellings = {
  shape: ({ amount }) => joined('formado', amount),
  carryIn: ({ amount }) => joined('ya había', amount),
  pull: ({ amount }) => joined('traído', amount),
  dip: ({ amount }) => joined('a la olla', amount),
  lift: ({ amount }) => joined('levantado', amount),
  board: ({ contents }) => joined('a las tablas', contents),
  moveBatch: ({ amount }) => joined('movido', amount),
  load: ({ shelf, contents }) => listed(joined('cargado', shelf), contents),
  changeLoad: ({ shelf, contents }) => listed(joined('corregido', shelf), contents),
  flip: ({ shelf }) => joined('volteado', shelf),
  out: ({ shelf, amount }) => listed(joined('sacado', shelf), amount),
  moveLoad: ({ shelf }) => joined('movida la carga de', shelf),
  wasteBatch: ({ amount }) => joined('merma', amount),
  confirmPresumed: () => 'confirmado lo que se dio por hecho',
  sell: ({ contents }) => joined('vendido', contents),
  remove: ({ contents }) => joined('quitado', contents),
  count: ({ contents }) => joined('contado', contents),
  keep: ({ contents }) => joined('apartado', contents),
  release: ({ contents }) => joined('liberado', contents),
  handOver: ({ contents }) => joined('entregado', contents),
  openDay: () => 'día abierto',
  closeDay: () => 'día cerrado',
  setLoadList: ({ count }) => `lista de cargas: ${count} ${count === 1 ? 'carga' : 'cargas'}`,
  forbidLoads: ({ count }) =>
    count === 0 ? 'dejó al plan elegir todas las cargas otra vez' : `descartó cargas para el plan, ${count} en total`,
  skipPlanned: ({ contents }) => joined('carga omitida', contents),
  changeSetUp: () => 'configuración cambiada',
  takeBack: ({ contents, amount }) => joined('deshecho', contents || amount),
  care: ({ care }) => (care === null ? 'cuidó la olla' : CARES[care]),
  setBoards: ({ count }) => `dijo que sirven ${count} tablas`,
  sellUnnamed: ({ amount }) => joined('vendió', amount),
  sweep: ({ contents }) => joined('contó', contents),
  lastOneGone: ({ contents }) => joined('vendió el último', contents),
  dayOldIn: ({ contents }) => joined('puso de ayer', contents),
  dayOldOut: ({ contents }) => joined('quitó de ayer', contents),
  reopenDay: () => 'reabrió el día',
  dropSetUp: () => 'descartó un cambio previsto de la configuración',
  takeUpSetUps: () => 'puso en vigor un cambio previsto de la configuración',
  noteImport: ({ text, count, date }) =>
    joined(`tomó ${count} ventas pasadas de`, text, date === '' ? '' : `(desde ${date})`),
  doStep: ({ step }) => joined('hizo', step),
  giveStep: ({ step, person }) => joined('dio', step, person === '' ? '' : `a ${person}`),
  testFloat: ({ amount }) => joined('probó a flote', amount),
  writeNote: ({ text }) => joined('anotó', text),
  clearNote: ({ text }) => joined('borró la nota', text),
  slipChangeover: ({ count }) => (count === 0 ? 'devolvió el cambio a su hora' : `movió el cambio ${count} min`),
  changeOverShelf: ({ shelf }) => joined('cambió', shelf),
  readOven: ({ shelf, count }) => joined('leyó el horno', shelf, `${count}°`),
  setWanted: ({ count, date }) =>
    joined('pedidas', count === 0 ? 'ninguna pieza' : `${count} piezas`, date && `para ${date}`),
  planMixes: ({ count, date }) =>
    joined('previstos', `${count} ${count === 1 ? 'amasijo' : 'amasijos'}`, date && `para ${date}`),
  orderMixes: () => 'puso en orden los amasijos',
  dropMix: ({ what }) => joined('descartó el amasijo', what),
  weighLine: ({ what }) => joined('pesó', what),
  readMix: ({ what }) => joined('tomó una temperatura de', what || 'un amasijo'),
  moveMix: ({ what, mixStage }) => joined(what, mixStage === null ? 'siguió' : STAGES[mixStage]),
  foldMix: ({ what, count }) => joined('plegó', what, count > 0 ? `(${count})` : ''),
  endMix: ({ what }) => joined('terminó el amasijo', what),
  placeBatch: ({ amount, text }) => joined('colocó', amount, text && `en ${text}`),
  readPlace: () => 'leyó una temperatura',
  countIngredients: ({ count }) => `contó ${count} ${count === 1 ? 'ingrediente' : 'ingredientes'}`,
  receiveIngredient: ({ what }) => joined('recibió', what),
  makePreparation: ({ what, date }) => joined('preparó', what, date && `para ${date}`),
  dropBuild: ({ what }) => joined('tiró', what),
  weighPieces: ({ amount }) => joined('pesó piezas:', amount || 'algunas'),
  takeOrder: ({ mark, count }) => joined('tomó el pedido', mark, `(${count})`),
  changeOrder: ({ mark }) => joined('cambió el pedido', mark),
  cancelOrder: ({ mark }) => joined('anuló el pedido', mark),
  missOrder: ({ mark }) => joined('terminó el pedido', mark, 'que nadie recogió'),
  handOverOrder: ({ mark }) => joined('entregó el pedido', mark),
  setStanding: ({ mark }) => joined('puso el pedido fijo', mark),
  endStanding: ({ mark }) => joined('terminó el pedido fijo', mark),
  moveItems: ({ mark, what, count, shelf }) =>
    listed(joined('adelantó', count > 1 ? `${count} ×` : '', what, shelf && `en ${shelf}`), mark && `pedido ${mark}`),
  countPortions: ({ what, count }) => joined('contó', String(count), what),
  takeUpOrders: () => 'tomó los pedidos fijos del día, o soltó lo que nadie recogió',
  otherwise: ({ contents, amount }) => joined('se hizo', contents || amount || 'algo'),
}

const CARES: { readonly [care in CareKind]: string } = {
  topUp: 'rellenó la olla',
  malt: 'echó malta a la olla',
  skim: 'espumó la olla',
  change: 'cambió el agua de la olla',
  boiling: 'vio hervir la olla',
  washBoards: 'lavó las tablas',
  washTrays: 'lavó las bandejas de semillas',
  washPeel: 'lavó la pala',
  sweepStone: 'barrió la piedra',
}

const STAGES: { readonly [stage in MixStage]: string } = {
  planned: 'de vuelta al plan',
  mixing: 'empezó a amasarse',
  rest: 'en reposo',
  bulk: 'en fermentación en bloque',
  bulkChill: 'en frío en bloque',
  bench: 'en la mesa',
  ended: 'terminado',
}
