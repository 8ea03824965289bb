import type { ContactPlace, PlanCause, PlanChange, PlanLoad, PlanWhy } from '../../shared-core/live/plan.ts'
import type { AdviceWords } from './advice.ts'
import { otherLines } from './advice-lines.ts'
import { ALLERGEN_NAMES } from './allergens.ts'
import { capitalised, listed } from './joined.ts'
import { money } from './money.ts'
import { stuffOf } from './names.ts'
import type { Words } from './words.ts'

export function esAdvice(words: Words): AdviceWords {
  const { times, names, line } = words
  const changeShort: AdviceWords['changeShort'] = (change) => changed(change, words)
  return {
    advised: 'aconsejada',
    set: 'fijada por la gente',
    why: (why) => whyText(why, words),
    whyShort: (why) => shortWhy(why, words),
    changeShort,
    change: (change) => listed(changeShort(change), cause(change.cause, words)),
    lastDip: (atMs, nowMs) => `última tanda ${atMs <= nowMs ? 'ya' : times.within(atMs - nowMs)}`,
    lastDipMark: 'última tanda',
    carries: (lines, others) =>
      `últimas cargas: ${[...lines.map((one) => line.becomes([one])), ...(others === 0 ? [] : [`${others} más`])].join(', ')}`,
    dips: (count) => `${count} ${count === 1 ? 'tanda' : 'tandas'}`,
    reasons: 'Por qué',
    firstDip: (atMs, nowMs) => `primera tanda ${atMs <= nowMs ? 'ya' : times.within(atMs - nowMs)}`,
    times: ({ kettleAtMs, inAtMs, outAtMs, readyAtMs }) =>
      `${kettleAtMs === null ? '' : `primera tanda ${times.clock(kettleAtMs)}, `}entra ${times.clock(inAtMs)}, sale ${times.clock(outAtMs)}, a la venta ${times.clock(readyAtMs)}`,
    pulls: (pulls) =>
      pulls.map((one) => `${times.clock(one.atMs)} ${stuffOf(one, names)} ${line.trays(one.trays)}`).join(', '),
    contact: ({ varietyId, allergens, where }) =>
      `${capitalised(line.list(allergens.map((one) => ALLERGEN_NAMES.es[one])))} ya pasó: ${line.list(where.map((one) => PLACES[one]))}; ${names.variety(varietyId)} no debe tocarlo: lavar o cambiar antes, o decirlo a quien compra`,
    contactShort: ({ varietyId, allergens }) =>
      `${allergens.map((one) => ALLERGEN_NAMES.es[one]).join(', ')} antes de ${names.variety(varietyId)}`,
    slip: ({ gainCents, lostFewer, leftFewer }) =>
      `${gainCents < 0 ? 'cuesta' : 'gana'} ${money(Math.abs(gainCents))}, ${fewer(lostFewer, 'en vano')}, ${fewer(leftFewer, 'al cierre')}`,
  }
}

const PLACES: { readonly [place in ContactPlace]: string } = {
  kettle: 'en el agua',
  boards: 'en las tablas',
  trays: 'en las bandejas de semillas',
  peel: 'en la pala',
  stone: 'en la piedra',
}

function whyText(why: PlanWhy, words: Words): string {
  const { times, names } = words
  if (why.kind !== 'runsOut') return shortWhy(why, words)
  const gone = `${names.variety(why.varietyId)} se acaba cerca de ${times.clock(why.atMs)}`
  return why.kettleByMs === null ? gone : `${gone}; llega si está en la olla ${times.by(why.kettleByMs)}`
}

function shortWhy(why: PlanWhy, { times, names }: Words): string {
  const name = names.variety(why.varietyId)
  switch (why.kind) {
    case 'runsOut':
      return `${name} se acaba ${times.clock(why.atMs)}`
    case 'opening':
      return `${name} para la apertura`
    case 'order':
      return `${name} para el pedido de ${times.clock(why.dueAtMs)}`
    case 'afternoon':
      return `${name} para la tarde`
    case 'fresh':
      return `${name} más fresco`
    case 'show':
      return `${name}: ${why.least} a la vista`
    case 'room':
      return `${name} mientras hay lugar`
    case 'pinned':
      return `${name} fijado por la gente`
  }
}

function changed({ what }: PlanChange, words: Words): string {
  switch (what.kind) {
    case 'order-of-loads':
      return 'Las cargas van ahora en otro orden'
    case 'load-dropped':
      return `Ya no va: ${loadText(what.load, words)}`
    case 'load-added':
      return `Ahora sigue ${loadText(what.load, words)}`
    case 'load-moved':
      return `${capitalised(loadText(what.load, words))}${what.wasAtMs === null ? '' : `, antes ${words.times.clock(what.wasAtMs)}`}`
    case 'contents':
      return `${capitalised(loadText(what.load, words))}: ${otherLines(what, words)}`
  }
}

/** @example "piso 2, 8:20" */
function loadText({ shelfId, inAtMs }: PlanLoad, { line, times }: Words): string {
  return `${line.shelf(shelfId)}, ${times.clock(inAtMs)}`
}

function cause(of: PlanCause, { names, line }: Words): string {
  switch (of.kind) {
    case 'sales':
      return `${names.variety(of.varietyId)} se vende ${of.isMore ? 'más rápido' : 'más despacio'} de lo esperado`
    case 'shelf-over':
      return `${line.shelf(of.shelfId)} ya terminó`
    case 'shelf-open':
      return `${line.shelf(of.shelfId)} lleva bagels otra vez`
    case 'load-other':
      return `a ${line.shelf(of.shelfId)} entró otra cosa`
    case 'dough':
      return `hay otra masa de ${names.dough(of.doughId)} que la prevista`
    default:
      return CAUSES[of.kind]
  }
}

const CAUSES: {
  readonly [kind in Exclude<PlanCause['kind'], 'sales' | 'shelf-over' | 'shelf-open' | 'load-other' | 'dough'>]: string
} = {
  'load-late': 'una carga entró tarde',
  'flip-late': 'una vuelta fue tarde',
  'kettle-slow': 'la olla va lenta',
  'oven-cold': 'el horno está frío',
  'set-up': 'cambió la configuración',
  changeover: 'se movió el cambio',
  people: 'hay otra gente',
  order: 'llegó un pedido',
  wish: 'alguien lo fijó así',
  other: '',
}

function fewer(by: number, what: string): string {
  const pieces = Math.round(Math.abs(by))
  return pieces === 0 ? `igual ${what}` : `${pieces} ${by > 0 ? 'menos' : 'más'} ${what}`
}
