import type { OrderId, VarietyId } from '../../shared-core/ids.ts'
import type { PromiseWhy } from '../../shared-core/orders/promise.ts'
import type { PromiseWords } from './promise.ts'
import type { Words } from './words.ts'

export function enPromise(words: Words): PromiseWords {
  const { times, line } = words
  return {
    from: (atMs) => `Ready ${times.at(atMs)}.`,
    notToday: 'Not today any more.',
    why: (why, markOf) => whyText(why, markOf, words),
    split: ({ nowLines, restAtMs }) => `Now ${line.contents(nowLines)}; the rest ${times.at(restAtMs)}.`,
    nextDay: (when) => `Orders for the next day are still taken: ${when}.`,
    noNextDay: 'Orders for the next day are closed as well.',
  }
}

function whyText(why: PromiseWhy, markOf: (orderId: OrderId) => string, { names, times, line }: Words): string {
  const what = (id: VarietyId | null) => (id === null ? 'what there is' : names.variety(id))
  switch (why.code) {
    case 'there':
      return 'It is there now.'
    case 'packing':
      return 'It is there; slicing and packing take until then.'
    case 'cooling':
      return `${names.variety(why.varietyId)} is out of the oven and cool enough ${times.at(why.readyAtMs)}.`
    case 'load': {
      const whose = why.varietyId === null ? 'The last of it' : names.variety(why.varietyId)
      const where = why.shelfId === null ? '' : `, from ${line.shelf(why.shelfId)}`
      return `${whose} is ready ${times.at(why.readyAtMs)}${where}.`
    }
    case 'orders':
      return `Until then ${what(why.varietyId)} is for ${markOf(why.orderId)}.`
    case 'walkIns':
      return `Until then ${what(why.varietyId)} is left to those who walk in.`
    case 'dough':
      return `Of ${names.dough(why.doughId)} no more dough is there today.`
    case 'noLoad':
      return `No load to come brings ${why.varietyId === null ? 'enough' : names.variety(why.varietyId)}.`
    case 'tooLate':
      return 'No load that is still to come is ready before the close.'
  }
}
