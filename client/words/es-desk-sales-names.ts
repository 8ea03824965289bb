import type { NamesWords } from './desk-sales.ts'

const pieces = (count: number) => `${count} ${count === 1 ? 'pieza' : 'piezas'}`

export const ES_SALES_NAMES: NamesWords = {
  title: 'Qué significan los nombres de la caja',
  hint: 'Lo más vendido primero. Cada nombre cuenta como lo que se dice aquí, en todos los archivos y en lo de hoy; se puede cambiar cualquier día.',
  none: 'Sin nombres todavía. Tome primero un archivo.',
  show: { open: 'sin decir', all: 'todos' },
  open: (names, percent) =>
    `${names} ${names === 1 ? 'nombre sin decir' : 'nombres sin decir'}, ${percent} de lo que se vendió.`,
  allSaid: 'Todos los nombres están dichos.',
  accept: 'Sí',
  acceptAll: (names) => (names === 1 ? 'Decir que sí a la sugerencia' : `Decir que sí a las ${names} sugerencias`),
  means: 'significa',
  kind: {
    variety: 'una variedad',
    pack: 'un paquete',
    unnamed: 'no dice cuál',
    kitchen: 'lo usa la cocina',
    nothing: 'ninguna pieza',
  },
  kindHint: {
    variety: 'Una o más piezas de una variedad: media docena de natural son seis.',
    pack: 'Tantas de cada una, siempre igual: una docena fija.',
    unnamed: 'Una docena, una pieza untada: se reparte como lo vendido con nombre ese día.',
    kitchen: 'Un sándwich: sus piezas van a la cocina.',
    nothing: 'Café, una tarjeta de regalo: no cuenta.',
  },
  notSaid: 'sin decir',
  suggested: 'quizá',
  variety: 'Variedad',
  pieces: 'Piezas',
  anyVariety: 'no dice cuál',
  among: 'Solo de estas; sin elegir: de todas',
  amongAll: 'de todas las variedades',
  addLine: 'Agregar una variedad',
  removeLine: (name) => `Quitar ${name}`,
  say: 'Decirlo',
  change: 'Cambiar',
  save: 'Eso es',
  cancel: 'Cancelar',
  forget: 'Olvidarlo',
  search: 'Buscar un nombre',
  meaning: {
    variety: (name, count) => (count === 1 ? name : `${count} × ${name}`),
    pack: (lines) => lines.map((line) => `${line.pieces} ${line.name}`).join(' + '),
    unnamed: (count, among) =>
      among === null ? `${pieces(count)}, de cualquier variedad` : `${pieces(count)} de ${among.join(', ')}`,
    kitchen: (name, count) =>
      name === null ? `cocina: ${pieces(count)}, de cualquier variedad` : `cocina: ${count} × ${name}`,
    nothing: 'ninguna pieza',
  },
  more: (names) => `Mostrar ${names} más`,
}
