import type { OrderDoubt, OrderFault } from '../../shared-core/live/orders-import.ts'
import type { Told } from '../../shared-core/live/sales-import.ts'
import type { CalendarWords, FilesWords, NamesWords } from './desk-orders-files.ts'
import type { Words } from './words.ts'

export function esOrdersFiles({ line }: Words): { readonly names: NamesWords; readonly files: FilesWords } {
  return { names: NAMES, files: files(line.list) }
}

const NAMES: NamesWords = {
  lead: 'Nombres, teléfonos y notas están aparte de los pedidos, en ningún registro de días pasados ni copia diaria. Lo que se borra aquí se va para siempre; el pedido se queda.',
  forgotten: (days) =>
    days === 0
      ? 'Se olvidan solos al día siguiente del día del pedido. Los de pedidos fijos quedan mientras estos sigan.'
      : `Se olvidan solos ${days} ${days === 1 ? 'día' : 'días'} después del día del pedido. Los de pedidos fijos quedan mientras estos sigan.`,
  search: 'Buscar un nombre, un teléfono o una marca',
  columns: { name: 'nombre', phone: 'teléfono', note: 'nota', of: 'de' },
  ofStanding: (mark) => `pedido fijo ${mark}`,
  ofOrder: (mark, date) => (mark === null ? `un pedido del ${date}` : `${mark}, ${date}`),
  none: 'No se sabe nada de nadie.',
  noneSuch: 'Nadie se llama así.',
  remove: 'Borrar',
  removeOf: (name) => `Borrar: ${name}`,
  sure: (name) => `¿Borrar para siempre lo que se sabe de ${name}? Nadie puede recuperarlo.`,
  yes: 'Sí, borrarlo',
  no: 'No',
  removed: (name) => `Borrado: ${name}.`,
  notRemoved: 'Ahora no se pudo borrar.',
  more: (names) => `Y ${names} más: búsquelos.`,
}

const CALENDAR: CalendarWords = {
  title: 'Los pedidos en un calendario',
  lead: 'Un enlace para el calendario de un teléfono o una computadora: muestra cuándo vencen los pedidos, con marca y piezas, nunca nombres. Quien tiene el enlace ve eso y nada más.',
  name: 'De quién es el calendario',
  make: 'Hacer un enlace',
  once: 'Este enlace se muestra una sola vez. Póngalo ahora en el calendario, como calendario por dirección.',
  openShop: 'El local deja entrar a todos, así que el enlace no guarda ningún secreto.',
  copy: 'Copiar',
  copied: 'Copiado',
  done: 'Listo',
  end: 'Terminarlo',
  older: 'Los enlaces de antes están entre los aparatos, y se terminan allí:',
  ended: 'Terminado: ya no muestra nada.',
  failed: 'No se pudo.',
}

/** What is wrong in a row; the server's own sentence is in English. */
function faultText({ code, params, text }: Told<OrderFault>): string {
  const { text: said = '' } = params
  switch (code) {
    case 'no-date':
      return `"${said}" no es una fecha como las demás. Ejemplo: ${params.example}`
    case 'no-time':
      return `"${said}" no es una hora.`
    case 'not-to-come':
      return `"${said}" ya pasó, o está demasiado lejos.`
    case 'no-way':
      return `"${said}" no dice si lo recogen o va a domicilio.`
    case 'no-variety':
      return `"${said}" no es ninguna variedad${params.near === '' || params.near === undefined ? '' : `. ¿${params.near}?`}`
    case 'no-item':
      return `"${said}" no está en el menú${params.near === '' || params.near === undefined ? '' : `. ¿${params.near}?`}`
    case 'no-bagel':
      return `Falta decir en qué bagel se hace ${params.item}.`
    case 'no-dozens':
    case 'no-pieces':
      return `"${said}" no es una cantidad.`
    case 'no-yes':
      return `"${said}" no es sí ni no.`
    case 'mark-too-long':
      return `La marca "${said}" es muy larga: a lo más ${params.most} caracteres.`
    case 'too-many-lines':
      return `El pedido tiene demasiadas líneas: a lo más ${params.most}.`
    case 'too-many-pieces':
      return `Son demasiadas piezas: a lo más ${params.most}.`
    case 'nothing-ordered':
      return 'Nada dice qué se pide.'
    case 'rows-differ':
      return `La línea ${params.line} dice otra cosa del mismo pedido.`
    case 'open-quote':
      return 'Una comilla no se cierra.'
    default:
      return text
  }
}

function doubtText({ code, params, text }: Told<OrderDoubt>, date: (iso: string) => string): string {
  switch (code) {
    case 'day-or-month':
      return `"${params.text}" se lee como ${date(String(params.one))}; podría ser también ${date(String(params.other))}. Ningún día después del 12 lo decide: diga cuál.`
    case 'am-or-pm':
      return `"${params.text}" no dice si es de la mañana, y el local no abre tan temprano: diga si es de la tarde.`
    case 'no-ref':
      return 'Ninguna columna tiene el número del pedido: cada fila es un pedido, y un archivo que llega dos veces se tomaría dos veces.'
    case 'many-bad':
      return `${params.bad} de ${params.of} filas no se pueden leer así. ¿Es cada columna lo que se cree?`
    default:
      return text
  }
}

function files(list: (items: readonly string[]) => string): FilesWords {
  return {
    title: 'Pedidos de un archivo',
    lead: 'Un CSV de su propia página, un formulario o una hoja de cálculo: una fila por línea de pedido. Primero se mira; nada se toma antes de que usted lo diga.',
    choose: 'Elegir un archivo',
    orDrop: 'o suéltelo aquí.',
    dropNow: 'Suéltelo: primero se mira, todavía no se toma nada.',
    reading: 'Leyendo el archivo…',
    columnsTitle: (name) => `Cómo se lee ${name}`,
    columnsHint: 'Junto a cada columna está por qué se toma. Cambie lo que no esté bien.',
    remembered: 'Columnas como en el último archivo de esta forma.',
    column: {
      none: 'no se usa',
      ref: 'número del pedido',
      mark: 'marca',
      name: 'nombre',
      phone: 'teléfono',
      dueDate: 'fecha, o fecha y hora',
      dueTime: 'hora',
      way: 'lo recogen o a domicilio',
      variety: 'variedad',
      dozens: 'docenas',
      pieces: 'piezas',
      item: 'cosa del menú',
      sliced: 'rebanado',
      bagged: 'embolsado',
      paid: 'pagado',
      note: 'nota',
    },
    afternoon: 'una hora antes de abrir es de la tarde',
    doubt: doubtText,
    fault: faultText,
    understood: (orders) => `Entendido: ${orders} ${orders === 1 ? 'pedido' : 'pedidos'}`,
    rowColumns: {
      rows: 'líneas',
      due: 'para',
      mark: 'marca',
      name: 'nombre',
      what: 'qué',
      way: 'cómo',
      state: 'estado',
    },
    state: { new: 'nuevo', known: 'ya estaba', taken: 'tomado' },
    guessed: (text, meant) => `"${text}" se toma por ${meant}`,
    faults: (rows) => `No se ${rows === 1 ? 'toma 1 fila' : `toman ${rows} filas`}`,
    faultsHint: 'Corríjalas en el archivo y suéltelo otra vez: los pedidos que ya están no se toman dos veces.',
    line: (number) => `Línea ${number}`,
    lines: (numbers) => list(numbers.map(String)),
    nothing: 'No se encuentran pedidos. ¿Es una tabla, con una línea de pedido en cada fila?',
    take: (orders) => `Tomar ${orders} ${orders === 1 ? 'pedido' : 'pedidos'}`,
    nothingNew: 'Nada nuevo que tomar',
    taken: (orders) => `Tomado: ${orders} ${orders === 1 ? 'pedido' : 'pedidos'}.`,
    putAway: 'Dejar este archivo',
    failed: 'No se pudo.',
    calendar: CALENDAR,
  }
}
