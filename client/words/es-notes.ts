import type { NoteWords } from './notes.ts'
import type { Words } from './words.ts'

export function esNotes({ times }: Words): NoteWords {
  return {
    title: 'Notas',
    count: (notes) => `${notes} ${notes === 1 ? 'nota' : 'notas'}`,
    from: (atMs) => times.at(atMs),
    none: 'Sin notas. Aquí va lo que el próximo turno debe saber.',
    write: 'Escribir una nota',
    field: 'Para el próximo turno, p. ej. centeno lento',
    leave: 'Dejar la nota',
    empty: 'todavía no hay nada escrito',
    caution: 'Aquí no van nombres ni teléfonos de clientes: todos lo leen y queda registrado.',
    clear: 'Borrar',
    clearOf: (text) => `Borrar: ${text}`,
    back: 'Volver',
    more: (notes) => `${notes} más`,
  }
}
