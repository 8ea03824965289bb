import type { NamesWords } from './desk-sales.ts'

const pieces = (count: number) => `${count} ${count === 1 ? 'piece' : 'pieces'}`

export const EN_SALES_NAMES: NamesWords = {
  title: 'What the till’s names mean',
  hint: 'The most sold first. Each name counts as what you say here, in all files and in today’s feed; it can be changed any day.',
  none: 'No names yet. Take a file first.',
  show: { open: 'not said yet', all: 'all' },
  open: (names, percent) =>
    `${names} ${names === 1 ? 'name is' : 'names are'} not said yet, ${percent} of what was sold.`,
  allSaid: 'Every name is said.',
  accept: 'Yes',
  acceptAll: (names) => (names === 1 ? 'Say yes to the suggestion' : `Say yes to all ${names} suggestions`),
  means: 'means',
  kind: {
    variety: 'a variety',
    pack: 'a pack',
    unnamed: 'does not say which',
    kitchen: 'the kitchen uses it',
    nothing: 'no bagel',
  },
  kindHint: {
    variety: 'One or more pieces of one variety: a half-dozen Plain is six.',
    pack: 'So many of each, always the same: a fixed dozen.',
    unnamed: 'A dozen, a bagel with spread: shared out as that day’s named sales were.',
    kitchen: 'A sandwich: its pieces go to the kitchen.',
    nothing: 'Coffee, a gift card: left out.',
  },
  notSaid: 'not said',
  suggested: 'perhaps',
  variety: 'Variety',
  pieces: 'Pieces',
  anyVariety: 'it does not say which',
  among: 'Only of these; none chosen: of all',
  amongAll: 'of all varieties',
  addLine: 'Add a variety',
  removeLine: (name) => `Remove ${name}`,
  say: 'Say it',
  change: 'Change',
  save: 'That is it',
  cancel: 'Cancel',
  forget: 'Forget it',
  search: 'Look for a name',
  meaning: {
    variety: (name, count) => (count === 1 ? name : `${count} × ${name}`),
    pack: (lines) => lines.map((line) => `${line.pieces} ${line.name}`).join(' + '),
    unnamed: (count, among) =>
      among === null ? `${pieces(count)}, any variety` : `${pieces(count)} of ${among.join(', ')}`,
    kitchen: (name, count) =>
      name === null ? `kitchen: ${pieces(count)}, any variety` : `kitchen: ${count} × ${name}`,
    nothing: 'no bagel',
  },
  more: (names) => `Show ${names} more`,
}
