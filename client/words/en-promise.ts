import type { OrderId, VarietyId } from '../../shared-core/ids.ts'
import type { RiskSave } from '../../shared-core/orders/at-risk.ts'
import type { PromiseWhy } from '../../shared-core/orders/promise.ts'
import { capitalised } from './joined.ts'
import type { PromiseWords } from './promise.ts'
import type { Words } from './words.ts'

export function enPromise(words: Words): PromiseWords {
  const { names, line, times } = words
  return {
    from: (atMs) => `Ready ${times.at(atMs)}.`,
    notToday: 'Not today any more.',
    why: (why, markOf) => whyText(why, markOf, words),
    split: ({ nowLines, restAtMs }) => `Now ${line.contents(nowLines)}; the rest ${times.at(restAtMs)}.`,
    nextDay: (when) => `Orders for the next day are still taken: ${when}.`,
    noNextDay: 'Orders for the next day are closed as well.',
    short: (missing) =>
      missing
        .map(({ varietyId, pieces }) => `${pieces} ${varietyId === null ? 'mixed' : names.variety(varietyId)}`)
        .join(', '),
    save: (save) => saveText(save, words),
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
      return `${capitalised(what(why.varietyId))} is out of the oven and cool enough ${times.at(why.readyAtMs)}.`
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

function saveText(save: RiskSave, { times, line }: Words): string {
  switch (save.code) {
    case 'keepNow':
      return `keep ${line.contents(save.lines)} for it now`
    case 'earlierLoad':
      return `${line.shelf(save.shelfId)} out ${times.by(save.readyByMs)} and not ${times.at(save.readyAtMs)}`
    case 'otherLoad':
      return `load ${line.contents(save.lines)} on ${line.shelf(save.shelfId)} next`
    case 'otherVariety':
      return `offer ${line.contents(save.lines)} in their place`
    case 'split':
      return `the rest ${times.at(save.restAtMs)}`
    case 'later':
      return `all of it ${times.at(save.atMs)}`
  }
}
