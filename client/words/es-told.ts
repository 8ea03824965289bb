import { joined, listed } from './joined.ts'
import type { Tellings } from './told-parts.ts'
import { tellWith } from './told-parts.ts'
import type { LineWords, Speech, ToldWords } from './words.ts'

export function esTold(speech: Speech, line: LineWords): ToldWords {
  const did: ToldWords['did'] = (told) => tellWith(TELLINGS, told, speech, line)
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
  skipPlanned: ({ contents }) => joined('carga omitida', contents),
  changeSetUp: () => 'configuración cambiada',
  takeBack: ({ contents, amount }) => joined('deshecho', contents || amount),
  otherwise: ({ contents, amount }) => joined('se hizo', contents || amount || 'algo'),
}
