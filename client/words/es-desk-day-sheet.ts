import type { DaySheetWords, FiguresWords } from './desk-day-sheet.ts'
import { signedPieces } from './desk-day-sheet.ts'
import { money } from './money.ts'
import type { Words } from './words.ts'

export function esDaySheet(words: Words): DaySheetWords {
  const { times, line } = words
  return {
    title: 'Hoja del día',
    head: (label, openedAtMs, closedAtMs) =>
      `${times.date(label)}: abierto ${times.at(openedAtMs)}, ${closedAtMs === null ? 'todavía sin cerrar' : `cerrado ${times.at(closedAtMs)}`}`,
    figures: figures(words),
    account: 'Adónde fue cada pieza',
    stillThere: 'siguen',
    left: 'Quedó a la venta al cierre',
    nothingLeft: 'nada',
    soldOut: 'Se acabó mientras el local estaba abierto',
    soldOutLine: (name, count, goneMs, pieces) =>
      `${name}: ${count === 1 ? 'una vez' : `${count} veces`}, ${times.span(goneMs)}, faltaron unas ${line.pieces(pieces)}`,
    notes: 'Notas para el turno siguiente',
    signed: 'Visto por',
    print: 'Imprimir una página',
    printHint: 'A4 o carta, negro sobre blanco.',
    csv: 'La cuenta en CSV',
    jsonLines: 'Todo lo que pasó en JSON Lines',
    files: 'Archivos de este día',
  }
}

function figures({ times, line }: Words): FiguresWords {
  return {
    title: 'El día en cinco cifras',
    waiting: 'Calculando…',
    noContact: 'No se pudo llegar al servidor; las cifras llegan cuando haya contacto.',
    missed: {
      name: 'Faltó',
      value: (pieces, cents) => `unas ${line.pieces(pieces)}, ${money(cents)}`,
      nobodyKnows: 'no se sabe: ninguna venta se dijo por variedad',
      first: (name, fromMs, forMs) => `lo primero que se acabó: ${name} ${times.at(fromMs)}, por ${times.span(forMs)}`,
      none: 'nada se acabó mientras el local estaba abierto',
    },
    left: {
      name: 'Quedó al cierre',
      value: (pieces) => line.pieces(pieces),
      fates: (dayOld, given, wasted) => `${dayOld} para mañana, ${given} regaladas, ${wasted} a la basura`,
      cost: (cents) => `hacerlas costó ${money(cents)}`,
      notClosed: 'se sabe cuando se cierra el día',
    },
    onTime: {
      name: 'A tiempo',
      atOpen: (there, of) => `${there} de ${of} variedades al abrir`,
      notOpened: 'el local todavía no abrió',
      oven: (byMs) =>
        Math.abs(byMs) < MINUTE_MS
          ? 'horno vacío al minuto'
          : `horno vacío ${times.span(Math.abs(byMs))} ${byMs < 0 ? 'antes' : 'tarde'}`,
      noChangeover: 'el horno todavía no se cambió, o nunca se cambia',
      noOrders: 'los pedidos a tiempo aún no se calculan',
    },
    baked: {
      name: 'Docenas por hora de trabajo',
      dozens: (perHour) => `${perHour.toFixed(1)}`,
      value: (pieces) => `${line.pieces(pieces)} horneadas`,
      hours: (minutes) => `en ${(minutes / 60).toFixed(2).replace(/\.?0+$/, '')} horas de trabajo`,
      nobodySaid: 'nadie dijo cuánto trabajó el equipo',
    },
    unexplained: {
      name: 'Sin explicar',
      value: (signed) => signedPieces(signed),
      absolute: (pieces) => `${line.pieces(pieces)} en todas las diferencias, para cualquier lado`,
      thrown: (pieces) => (pieces === 0 ? 'no se tiró masa' : `${line.pieces(pieces)} de masa tiradas`),
    },
  }
}

const MINUTE_MS = 60_000
