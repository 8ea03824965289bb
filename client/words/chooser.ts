import type { Language } from '../../shared-core/shop/shop.ts'

/** What the page says on which one chooses a screen. It is shown before anything of the shop is known. */
export interface ChooserWords {
  readonly title: string
  readonly lead: string
  readonly screens: {
    readonly [screen in 'wall' | 'bench' | 'counter' | 'desk']: { readonly name: string; readonly use: string }
  }
  readonly language: string
}

export const CHOOSER_WORDS: { readonly [language in Language]: ChooserWords } = {
  en: {
    title: 'Which screen is this?',
    lead: 'Choose where this device stands. It can be changed at any time by opening another address.',
    screens: {
      wall: { name: 'Wall', use: 'Over the boiler: what to do next, seen from across the room.' },
      bench: { name: 'Bench', use: 'A tablet at the line: load, flip and out, one key for each shelf.' },
      counter: { name: 'Counter', use: 'What is left, what is coming, and what is sold or kept.' },
      desk: { name: 'Desk', use: 'Set-up, load list, trays, and the account of the day.' },
    },
    language: 'Language',
  },
  es: {
    title: '¿Qué pantalla es esta?',
    lead: 'Elija dónde está este aparato. Se cambia en cualquier momento abriendo otra dirección.',
    screens: {
      wall: { name: 'Pared', use: 'Sobre la olla: qué sigue, visto desde todo el cuarto.' },
      bench: { name: 'Línea', use: 'Tableta en la línea: cargar, voltear y sacar, una tecla por piso.' },
      counter: { name: 'Mostrador', use: 'Qué queda, qué viene, y qué se vende o se aparta.' },
      desk: { name: 'Escritorio', use: 'Configuración, lista de cargas, bandejas y la cuenta del día.' },
    },
    language: 'Idioma',
  },
}
