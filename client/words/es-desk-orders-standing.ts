import type { Recurrence } from '../../shared-core/orders/recurrence.ts'
import { isoWeekday } from '../../shared-core/shop/hours.ts'
import type { StandingWords } from './desk-orders-standing.ts'
import type { Words } from './words.ts'

const WEEKDAYS = ['lun', 'mar', 'mié', 'jue', 'vie', 'sáb', 'dom']
const NTH: { readonly [nth: number]: string } = {
  1: 'primer',
  2: 'segundo',
  3: 'tercer',
  4: 'cuarto',
  5: 'quinto',
  '-1': 'último',
}
const UNITS = { daily: ['día', 'días'], weekly: ['semana', 'semanas'], monthly: ['mes', 'meses'] } as const

export function esStanding({ times, line }: Words): StandingWords {
  const unit = (freq: Recurrence['freq'], count: number) => UNITS[freq][count === 1 ? 0 : 1]
  const weekday = (iso: number) => WEEKDAYS[iso - 1] ?? ''
  const nth = (number: number) => `el ${NTH[number] ?? number}`
  const dated = (date: string, today: string) =>
    date.slice(0, 4) === today.slice(0, 4) ? times.date(date) : `${times.date(date)} de ${date.slice(0, 4)}`
  return {
    lead: 'Vienen solos: el pedido de un día se hace cuando ese día se abre, y la masa de mañana los cuenta.',
    none: 'Todavía no hay pedidos fijos.',
    add: 'Un pedido fijo nuevo',
    newTitle: 'Un pedido fijo nuevo',
    title: (mark) => `Pedido fijo ${mark}`,
    columns: { mark: 'de', when: 'cuándo', what: 'qué', next: 'siguiente' },
    rule: (recurrence) => rule(recurrence, { weekday, nth, unit, list: line.list }),
    bounds: ({ from, until }, today) =>
      [from > today ? `desde el ${dated(from, today)}` : '', until === null ? '' : `hasta el ${dated(until, today)}`]
        .filter((part) => part !== '')
        .join(', '),
    freq: 'Viene',
    freqs: { daily: 'por días', weekly: 'por semanas', monthly: 'por meses' },
    interval: 'Cada',
    unit,
    weekdays: 'Los',
    weekday,
    inMonth: 'En el mes',
    onDate: (from) => (from === '' ? 'en su fecha' : `el día ${Number(from.slice(8))}`),
    everyWeekday: 'todos esos días',
    nth,
    from: 'Desde',
    until: 'Hasta',
    untilHint: 'Vacío, sigue sin fin.',
    exceptions: 'Excepciones',
    exceptHint: 'Días en que no viene, o viene además.',
    exceptDate: 'Día',
    addExcept: 'Ese día no',
    addAlso: 'Ese día además',
    except: (date) => `no el ${times.date(date)} de ${date.slice(0, 4)}`,
    also: (date) => `además el ${times.date(date)} de ${date.slice(0, 4)}`,
    takeAway: (told) => `Quitar: ${told}`,
    onHolidays: 'Viene también en días festivos',
    onHolidaysHint: 'Los festivos son los del calendario del local. Si el local cierra, no viene.',
    next: 'Próximos días',
    nextNone: 'No viene ningún día del próximo año.',
    holiday: 'festivo: no viene',
    closed: 'cerrado: no viene',
    save: 'Guardar',
    end: 'Terminarlo',
    endOf: (mark) => `Terminarlo: ${mark}`,
    sureToEnd: (mark) => `¿Terminar ${mark}? Los pedidos que ya se hicieron de él se quedan.`,
    yesEnd: 'Sí, terminarlo',
    no: 'No',
    missing: {
      mark: 'Diga la marca.',
      time: 'Diga la hora.',
      pieces: 'Diga cuántas piezas.',
      from: 'Diga desde qué día.',
      until: 'Terminaría antes de empezar.',
      weekdays: 'Elija un día de la semana.',
      never: 'Así no vendría nunca.',
    },
    unknown: 'Ese pedido fijo ya no está.',
  }
}

interface RuleWords {
  readonly weekday: (iso: number) => string
  readonly nth: (nth: number) => string
  readonly unit: (freq: Recurrence['freq'], count: number) => string
  readonly list: (items: readonly string[]) => string
}

function rule({ freq, interval, weekdays, nth, from }: Recurrence, say: RuleWords): string {
  const days = say.list([...weekdays].sort((one, other) => one - other).map(say.weekday))
  const every = interval === 1 ? '' : `cada ${interval} ${say.unit(freq, interval)}`
  if (freq === 'daily') {
    if (weekdays.length > 0) return every === '' ? `cada ${days}` : `${every}, si es ${days}`
    return every === '' ? 'todos los días' : every
  }
  if (freq === 'weekly') {
    const on = weekdays.length === 0 ? say.weekday(isoWeekday(from)) : days
    return every === '' ? `cada ${on}` : `${every}, ${on}`
  }
  const which =
    weekdays.length === 0
      ? `día ${Number(from.slice(8))}`
      : nth === null
        ? `todos los ${days}`
        : `${say.nth(nth)} ${days}`
  return every === '' ? `${which} de cada mes` : `${which}, ${every}`
}
