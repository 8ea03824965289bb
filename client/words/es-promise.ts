import type { OrderId, VarietyId } from '../../shared-core/ids.ts'
import type { RiskSave } from '../../shared-core/orders/at-risk.ts'
import type { PromiseWhy } from '../../shared-core/orders/promise.ts'
import { capitalised } from './joined.ts'
import type { PromiseWords } from './promise.ts'
import type { Words } from './words.ts'

export function esPromise(words: Words): PromiseWords {
  const { names, line, times } = words
  return {
    from: (atMs) => `Listo ${times.at(atMs)}.`,
    notToday: 'Hoy ya no.',
    why: (why, markOf) => whyText(why, markOf, words),
    split: ({ nowLines, restAtMs }) => `Ahora ${line.contents(nowLines)}; el resto ${times.at(restAtMs)}.`,
    nextDay: (when) => `Todavía se toman pedidos para el día siguiente: ${when}.`,
    noNextDay: 'Tampoco se toman ya pedidos para el día siguiente.',
    short: (missing) =>
      missing
        .map(({ varietyId, pieces }) => `${pieces} ${varietyId === null ? 'surtidos' : names.variety(varietyId)}`)
        .join(', '),
    save: (save) => saveText(save, words),
  }
}

function whyText(why: PromiseWhy, markOf: (orderId: OrderId) => string, { names, times, line }: Words): string {
  const what = (id: VarietyId | null) => (id === null ? 'lo que hay' : names.variety(id))
  switch (why.code) {
    case 'there':
      return 'Ya está.'
    case 'packing':
      return 'Ya está; rebanar y empacar tarda hasta entonces.'
    case 'cooling':
      return `${capitalised(what(why.varietyId))} salió del horno y estará frío ${times.at(why.readyAtMs)}.`
    case 'load': {
      const whose = why.varietyId === null ? 'Lo último' : names.variety(why.varietyId)
      const where = why.shelfId === null ? '' : `, de ${line.shelf(why.shelfId)}`
      return `${whose} estará listo ${times.at(why.readyAtMs)}${where}.`
    }
    case 'orders':
      return `Hasta entonces ${what(why.varietyId)} es para ${markOf(why.orderId)}.`
    case 'walkIns':
      return `Hasta entonces ${what(why.varietyId)} queda para quien entra a comprar.`
    case 'dough':
      return `De ${names.dough(why.doughId)} hoy no queda más masa.`
    case 'noLoad':
      return `Ninguna carga por venir trae ${why.varietyId === null ? 'lo suficiente' : names.variety(why.varietyId)}.`
    case 'tooLate':
      return 'Ninguna carga por venir estará lista antes del cierre.'
  }
}

function saveText(save: RiskSave, { times, line }: Words): string {
  switch (save.code) {
    case 'keepNow':
      return `apartarle ya ${line.contents(save.lines)}`
    case 'earlierLoad':
      return `sacar ${line.shelf(save.shelfId)} ${times.by(save.readyByMs)} y no ${times.at(save.readyAtMs)}`
    case 'otherLoad':
      return `cargar ahora ${line.contents(save.lines)} en ${line.shelf(save.shelfId)}`
    case 'otherVariety':
      return `ofrecer ${line.contents(save.lines)} en su lugar`
    case 'split':
      return `el resto ${times.at(save.restAtMs)}`
    case 'later':
      return `todo ${times.at(save.atMs)}`
  }
}
