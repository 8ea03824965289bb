import { joined, listed } from './joined.ts'
import type { Tellings } from './told-parts.ts'
import { tellWith } from './told-parts.ts'
import type { LineWords, Speech, ToldWords } from './words.ts'

export function enTold(speech: Speech, line: LineWords): ToldWords {
  const did: ToldWords['did'] = (told) => tellWith(TELLINGS, told, speech, line)
  return { did, at: (told, atMs) => joined(speech.localTime(atMs), did(told)), takeBack: 'Take back' }
}

const TELLINGS: Tellings = {
  shape: ({ amount }) => joined('shaped', amount),
  carryIn: ({ amount }) => joined('carried in', amount),
  pull: ({ amount }) => joined('pulled', amount),
  dip: ({ amount }) => joined('dipped', amount),
  lift: ({ amount }) => joined('lifted', amount),
  board: ({ contents }) => joined('boarded', contents),
  moveBatch: ({ amount }) => joined('moved', amount),
  load: ({ shelf, contents }) => listed(joined('loaded', shelf), contents),
  changeLoad: ({ shelf, contents }) => listed(joined('put right', shelf), contents),
  flip: ({ shelf }) => joined('flipped', shelf),
  out: ({ shelf, amount }) => listed(joined('out of', shelf), amount),
  moveLoad: ({ shelf }) => joined('moved the load of', shelf),
  wasteBatch: ({ amount }) => joined('wasted', amount),
  confirmPresumed: () => 'confirmed what was taken as done',
  sell: ({ contents }) => joined('sold', contents),
  remove: ({ contents }) => joined('took off', contents),
  count: ({ contents }) => joined('counted', contents),
  keep: ({ contents }) => joined('kept', contents),
  release: ({ contents }) => joined('released', contents),
  handOver: ({ contents }) => joined('handed over', contents),
  openDay: () => 'opened the day',
  closeDay: () => 'closed the day',
  setLoadList: ({ count }) => `set the load list: ${count} ${count === 1 ? 'load' : 'loads'}`,
  skipPlanned: ({ contents }) => joined('left out the load', contents),
  changeSetUp: () => 'changed the set-up',
  takeBack: ({ contents, amount }) => joined('took back', contents || amount),
  otherwise: ({ contents, amount }) => joined('did', contents || amount || 'something'),
}
