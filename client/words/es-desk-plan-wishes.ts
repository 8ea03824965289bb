import type { DeskWords } from './desk.ts'
import type { BakePlanWords } from './desk-plan.ts'
import { costText } from './es-desk-plan.ts'
import { money } from './money.ts'

/** What people set and forbid, and what that costs. */
export function esWishes(words: DeskWords): Pick<BakePlanWords, 'chosen' | 'wishes' | 'tried' | 'last'> {
  const { times, line, names } = words
  return {
    chosen: {
      title: (shelf, inAtMs) => `${capital(shelf)} ${times.at(inAtMs)}`,
      times: ({ kettleAtMs, dips, inAtMs, flipAtMs, outAtMs, readyAtMs }) =>
        [
          kettleAtMs === null
            ? ''
            : `primera tanda ${times.at(kettleAtMs)}, ${dips} ${dips === 1 ? 'tanda' : 'tandas'}`,
          `entra ${times.at(inAtMs)}`,
          flipAtMs === null ? '' : `vuelta ${times.at(flipAtMs)}`,
          `sale ${times.at(outAtMs)}`,
          `a la venta ${times.at(readyAtMs)}`,
        ]
          .filter((part) => part !== '')
          .join(', '),
      earlier: '5 min antes',
      later: '5 min después',
      shelf: 'Piso',
      pin: 'Fijar aquí',
      unpin: 'Dejar que se mueva',
      leaveOut: 'Dejarla fuera',
      notThen: (variety) => `${variety} no a esa hora`,
      putAway: 'Cerrar',
    },
    wishes: {
      title: 'Lo que fijó la gente',
      none: 'No hay nada fijado ni libre: el plan es todo consejo.',
      pin: (contents, shelf, inAtMs) =>
        `${contents}: ${[shelf ?? 'cualquier piso', inAtMs === null ? 'cuando se libere' : `entra ${times.at(inAtMs)}`].join(', ')}`,
      forbid: ({ shelfId, varietyId, fromMs, toMs }) =>
        `${varietyId === null ? 'Sin cargas' : `Sin ${names.variety(varietyId)}`}${shelfId === null ? '' : ` en ${line.shelf(shelfId)}`} de ${times.clock(fromMs)} a ${times.clock(toMs)}`,
      lift: 'Permitir otra vez',
      unpin: 'Dejar que se mueva',
      addTitle: 'Dejar libre un rato',
      anyShelf: 'todos los pisos',
      anyVariety: 'todo',
      shelf: 'Piso',
      variety: 'Qué',
      from: 'Desde',
      to: 'Hasta',
      add: 'Dejar libre',
      wrongSpan: 'Tiene que terminar después de empezar, el mismo día.',
    },
    tried: {
      title: 'Sin guardar',
      waiting: 'Calculando lo que cuesta…',
      failed: 'No se pudo calcular lo que cuesta. Se puede guardar de todos modos.',
      costs: costText,
      all: (costs) => `Todo lo fijado, frente a un día sin nada fijado: ${costs}`,
      keep: 'Guardar',
      leave: 'Dejarlo como estaba',
    },
    last: {
      title: 'Las últimas cargas',
      by: (kettleByMs, inByMs, emptyByMs) =>
        `Última tanda ${times.by(kettleByMs)}, última carga adentro ${times.by(inByMs)}, horno vacío ${times.by(emptyByMs)}. Después ya no se hornea.`,
      carries: (loads) => `Alcanzan para la tarde: ${loads.join('; ')}.`,
      slip: (byMs, gainCents, lostFewer, leftFewer) =>
        `Cambio ${times.span(Math.abs(byMs))} ${byMs > 0 ? 'después' : 'antes'}: ${gainCents < 0 ? 'cuesta' : 'gana'} ${money(Math.abs(gainCents))}, ${fewer(lostFewer, 'en vano')}, ${fewer(leftFewer, 'al cierre')}.`,
    },
  }
}

function fewer(by: number, what: string): string {
  const pieces = Math.round(Math.abs(by) * 10) / 10
  return pieces === 0 ? `igual ${what}` : `${pieces} ${by > 0 ? 'menos' : 'más'} ${what}`
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}
