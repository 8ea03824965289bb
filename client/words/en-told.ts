import type { CareKind } from '../../shared-core/day/said.ts'
import type { MixStage } from '../../shared-core/dough/mix.ts'
import { joined, listed } from './joined.ts'
import type { TellingParts, Tellings } from './told-parts.ts'
import { tellWith } from './told-parts.ts'
import type { Speech, ToldWords } from './words.ts'

export function enTold(speech: Speech, parts: TellingParts): ToldWords {
  const did: ToldWords['did'] = (told) => tellWith(TELLINGS, told, speech, parts)
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
  forbidLoads: ({ count }) =>
    count === 0 ? 'let the plan choose all loads again' : `ruled out loads for the plan, ${count} in all`,
  skipPlanned: ({ contents }) => joined('left out the load', contents),
  changeSetUp: () => 'changed the set-up',
  takeBack: ({ contents, amount }) => joined('took back', contents || amount),
  care: ({ care }) => (care === null ? 'cared for the kettle' : CARES[care]),
  setBoards: ({ count }) => `said that ${count} boards can be used`,
  sellUnnamed: ({ amount }) => joined('sold', amount),
  sweep: ({ contents }) => joined('counted', contents),
  lastOneGone: ({ contents }) => joined('sold the last', contents),
  dayOldIn: ({ contents }) => joined('put out day-old', contents),
  dayOldOut: ({ contents }) => joined('took day-old', contents),
  reopenDay: () => 'reopened the day',
  dropSetUp: () => 'dropped a planned change of the set-up',
  takeUpSetUps: () => 'took a planned change of the set-up into effect',
  noteImport: ({ text, count, date }) =>
    joined(`took ${count} past sales from`, text, date === '' ? '' : `(from ${date} on)`),
  doStep: ({ step }) => joined('did', step),
  giveStep: ({ step, person }) => joined('gave', step, person === '' ? '' : `to ${person}`),
  testFloat: ({ amount }) => joined('float-tested', amount),
  writeNote: ({ text }) => joined('noted', text),
  clearNote: ({ text }) => joined('cleared the note', text),
  slipChangeover: ({ count }) =>
    count === 0 ? 'put the changeover back to its time' : `moved the changeover by ${count} min`,
  changeOverShelf: ({ shelf }) => joined('changed over', shelf),
  readOven: ({ shelf, count }) => joined('read the oven', shelf, `${count}°`),
  setWanted: ({ count, date }) => joined('wanted', count === 0 ? 'nothing' : `${count} pieces`, date && `for ${date}`),
  planMixes: ({ count, date }) => joined('planned', `${count} ${count === 1 ? 'mix' : 'mixes'}`, date && `for ${date}`),
  orderMixes: () => 'put the mixes in order',
  dropMix: ({ what }) => joined('dropped the mix', what),
  weighLine: ({ what }) => joined('weighed', what),
  readMix: ({ what }) => joined('took a temperature of', what || 'a mix'),
  moveMix: ({ what, mixStage }) => joined(what, mixStage === null ? 'moved on' : STAGES[mixStage]),
  foldMix: ({ what, count }) => joined('folded', what, count > 0 ? `(${count})` : ''),
  endMix: ({ what }) => joined('ended the mix', what),
  placeBatch: ({ amount, text }) => joined('placed', amount, text && `at ${text}`),
  readPlace: () => 'read a temperature',
  countIngredients: ({ count }) => `counted ${count} ${count === 1 ? 'ingredient' : 'ingredients'}`,
  receiveIngredient: ({ what }) => joined('received', what),
  makePreparation: ({ what, date }) => joined('made', what, date && `for ${date}`),
  dropBuild: ({ what }) => joined('threw away', what),
  weighPieces: ({ amount }) => joined('weighed', amount),
  takeOrder: ({ mark, count }) => joined('took the order', mark, `(${count})`),
  changeOrder: ({ mark }) => joined('changed the order', mark),
  cancelOrder: ({ mark }) => joined('cancelled the order', mark),
  missOrder: ({ mark }) => joined('ended the order', mark, 'as nobody came for it'),
  handOverOrder: ({ mark }) => joined('handed over the order', mark),
  setStanding: ({ mark }) => joined('set the standing order', mark),
  endStanding: ({ mark }) => joined('ended the standing order', mark),
  moveItems: ({ mark, what, count, shelf }) =>
    listed(joined('moved on', count > 1 ? `${count} ×` : '', what, shelf && `on ${shelf}`), mark && `order ${mark}`),
  countPortions: ({ what, count }) => joined('counted', String(count), what),
  takeUpOrders: () => 'took up the day’s standing orders, or let go what nobody fetched',
  otherwise: ({ contents, amount }) => joined('did', contents || amount || 'something'),
}

const CARES: { readonly [care in CareKind]: string } = {
  topUp: 'topped up the kettle',
  malt: 'put malt into the kettle',
  skim: 'skimmed the kettle',
  change: 'changed the kettle’s water',
  boiling: 'saw the kettle boil',
  washBoards: 'washed the boards',
  washTrays: 'washed the seed trays',
  washPeel: 'washed the peel',
  sweepStone: 'swept the stone',
}

const STAGES: { readonly [stage in MixStage]: string } = {
  planned: 'back on the plan',
  mixing: 'began to mix',
  rest: 'put to rest',
  bulk: 'put to bulk ferment',
  bulkChill: 'chilled in bulk',
  bench: 'put on the bench',
  ended: 'ended',
}
