import type { RowFault, Told } from '../../shared-core/live/sales-import.ts'
import type { SalesWords } from './desk-sales.ts'
import { ES_SALES_NAMES } from './es-desk-sales-names.ts'

const MARKS = new Intl.NumberFormat('es-US')

const number = (count: number) => MARKS.format(count)
const rows = (count: string) => `${count} ${count === '1' ? 'fila' : 'filas'}`

export const ES_SALES: SalesWords = {
  pages: { files: 'Archivos', names: 'Qué significan los nombres' },
  pagesName: 'Páginas de ventas pasadas',
  lead: 'Las ventas pasadas de su caja le enseñan a la pizarra qué se vende y cuándo. Se quedan en su servidor, junto al diario.',
  waiting: 'Mirando …',
  noContact: 'Sin contacto con el servidor del local. Sigue en cuanto lo haya.',
  unknown: 'Este archivo ya no está.',
  failed: 'No se pudo.',
  drop: {
    choose: 'Elegir un archivo',
    orDrop: 'o suéltelo aquí: un CSV que guarda su caja, del largo que sea.',
    dropNow: 'Suéltelo: primero se mira, todavía no se toma nada.',
    hint: 'Lo mejor es una fila por cada renglón de un recibo: fecha y hora, qué se vendió, cuántas, el número del recibo. Un archivo que se cruza con otro agrega solo lo nuevo.',
    sending: (name, percent) => `${name}: llegó el ${percent} %`,
    stop: 'Parar',
    notSent: 'El archivo no llegó. Intente otra vez cuando haya contacto.',
  },
  files: {
    title: 'Archivos hasta ahora',
    none: 'Ninguno todavía.',
    columns: {
      name: 'archivo',
      days: 'días',
      taken: 'filas buenas',
      doubled: 'ya estaban',
      bad: 'no se leen',
      state: 'estado',
    },
    state: { waiting: 'le espera', taking: 'se está tomando', taken: 'tomado', failed: 'falló' },
    span: (from, to) => (from === to ? from : `${from} a ${to}`),
    remove: 'Quitar',
    removeAsk: (name, count) => `¿Quitar ${name} y sus ${rows(count)}? Se olvida lo que solo este archivo contó.`,
    removeEmptyAsk: (name) => `¿Quitar ${name}? No se tomó ninguna de sus filas, así que no se olvida nada.`,
    removeYes: 'Quitarlo',
    removeNo: 'Dejarlo',
  },
  mapping: {
    title: (name) => `Cómo se lee ${name}`,
    hint: 'Junto a cada columna dice por qué se toma. Cambie lo que no es, y mire abajo lo que se entiende.',
    remembered: 'Las columnas como en el último archivo de esta forma.',
    column: {
      none: 'no se usa',
      date: 'fecha, o fecha y hora',
      clock: 'hora',
      item: 'qué se vendió',
      detail: 'es parte del nombre',
      pieces: 'cuántas',
      transaction: 'recibo',
      line: 'clave de la fila',
      voided: 'anulada o devuelta',
    },
    columnHint: {
      none: 'No se toca.',
      date: 'El día de la venta.',
      clock: 'Si va aparte de la fecha.',
      item: 'El nombre en la tecla de la caja.',
      detail: 'Un tamaño o tipo que completa el nombre.',
      pieces: 'Con menos es una devolución.',
      transaction: 'Lo que tienen en común los renglones de un recibo.',
      line: 'Con ella se reconoce una fila en otro archivo.',
      voided: 'Dice de una fila que no cuenta.',
    },
    columnNumber: (number_) => `Columna ${number_}`,
    missing: { date: 'Diga en qué columna está la fecha.', item: 'Diga en qué columna está lo que se vendió.' },
    form: 'Cómo está escrito el archivo',
    hasHeader: 'la primera línea nombra las columnas',
    skip: 'Líneas que se saltan al principio',
    delimiter: 'Entre columnas',
    delimiters: { ',': 'coma', ';': 'punto y coma', '\t': 'tabulador', '|': 'barra |' },
    quote: 'Texto entre',
    decimal: 'Decimales tras',
    dateForm: 'Las fechas son',
    itIs: (date) => `No: es ${date}`,
    dateForms: {
      'y-m-d': 'año, mes, día',
      'm-d-y': 'mes, día, año',
      'd-m-y': 'día, mes, año',
      'epoch-s': 'segundos desde 1970',
      'epoch-ms': 'milisegundos desde 1970',
    },
    understood: 'Lo que se entiende',
    rows: { line: 'línea', day: 'día', time: 'hora', item: 'qué', pieces: 'piezas', purchase: 'recibo' },
    voided: 'anulada',
    take: 'Tomar este archivo',
    noRows: 'No se encuentran filas. ¿Es una tabla, con una venta en cada línea?',
  },
  taking: {
    progress: (percent, rate) => (rate === null ? `${percent} %` : `${percent} %, ${rate} filas por segundo`),
    leave: 'Sigue solo: puede dejar esta página, y hasta pararse el servidor entre tanto.',
    stuck: 'Por ahora no puede seguir; se intenta de nuevo dos veces por minuto. ¿Está lleno el disco del servidor?',
    again: 'Seguir',
    result: (count, taken) => `${rows(count)} leídas, ${taken} de ellas buenas.`,
    doubled: (count) => `${count} ya estaban, de otro archivo o de la caja misma.`,
    allGood: 'Se pudieron leer todas las filas.',
    toNames: 'Ver qué significan los nombres',
    failed: 'No se pudo tomar hasta el final.',
    figures: { rows: 'filas leídas', taken: 'filas buenas', doubled: 'de ellas ya estaban', bad: 'no se leen' },
  },
  bad: {
    title: 'Filas que no se pudieron leer',
    hint: 'Corrija una línea como debe estar en el archivo, y tómela; o déjela ir si no es una venta.',
    line: (line) => `Línea ${number(line)}`,
    save: 'Tomarla',
    saveAll: (lines) => `Tomar estas ${number(lines)} líneas`,
    letGo: 'No es venta',
    more: 'Más',
    taken: (lines, doubled) =>
      doubled === 0 ? `✓ ${number(lines)} tomadas` : `✓ ${number(lines)} tomadas, ${number(doubled)} ya estaban`,
    unsaved: 'cambiada, sin tomar todavía',
  },
  names: ES_SALES_NAMES,
  doubt: ({ code, params, text }, date) => {
    switch (code) {
      case 'day-or-month':
        return `"${params.text}" se lee como ${date(String(params.one))}; también puede ser ${date(String(params.other))}. Ningún día después del 12 lo decide: diga cuál.`
      case 'same-file':
        return `Este mismo archivo ya está, como "${params.name}". Tomarlo otra vez no agrega nada.`
      case 'no-transaction':
        return 'Nada dice qué filas se compraron juntas: cada fila cuenta como una compra.'
      case 'one-a-row':
        return 'Ninguna columna dice cuántas: cada fila cuenta como una.'
      case 'no-times':
        return 'El archivo tiene fechas sin horas: dice cuántas se fueron en un día, no cuándo.'
      case 'many-bad':
        return `${params.bad} de las ${params.of} filas miradas no se leen así. ¿Es cada columna lo que se toma?`
      default:
        return text
    }
  },
  fault,
  number,
}

function fault({ code, params, text }: Told<RowFault>): string {
  const { columns, needed, text: said, column, most, example } = params
  switch (code) {
    case 'too-few-columns':
      return `La fila tiene ${columns} columnas; hacen falta ${needed}. ¿Es un total o una línea cortada?`
    case 'no-date':
      return `"${said}" en la columna ${column} no es una fecha como las otras. Escríbala como ellas, p. ej. ${example}.`
    case 'to-come':
      return `"${said}" en la columna ${column} es posterior al día en que llegó el archivo. Escriba el día de la venta.`
    case 'no-time':
      return `"${said}" en la columna ${column} no es una hora. Escríbala como 8:05 o 8:05 am.`
    case 'no-item':
      return `La columna ${column} está vacía; debe decir qué se vendió.`
    case 'no-pieces':
      return `"${said}" en la columna ${column} no es un número de piezas. Escriba un número entero, con menos si es devolución.`
    case 'parts-of-pieces':
      return `${said} piezas en la columna ${column} no son enteras. Escriba un número entero.`
    case 'too-many-pieces':
      return `${said} piezas en la columna ${column} son más de las que caben en una fila; ${most} como máximo.`
    case 'open-quote':
      return 'En esta línea se abre una comilla y no se cierra. Ciérrela, o quítela.'
    default:
      return text
  }
}
