/** The desk's places, by what the owner wants, in the order of a day. */
export const PLACES = [
  'today',
  'orders',
  'loads',
  'coming',
  'plan',
  'dough',
  'close',
  'past',
  'history',
  'salesIn',
  'setUp',
  'screens',
] as const
export type DeskPlace = (typeof PLACES)[number]

/** What stands in the address after the hash; links and bookmarks hold on to it, so it is the same in every language. */
const SLUGS: { readonly [place in DeskPlace]: string } = {
  today: 'today',
  orders: 'orders',
  loads: 'loads',
  coming: 'coming',
  plan: 'plan',
  dough: 'dough',
  close: 'close',
  past: 'past',
  history: 'history',
  salesIn: 'sales-in',
  setUp: 'set-up',
  screens: 'screens',
}

export interface Where {
  readonly place: DeskPlace
  /** What stands after the place: a day, a part of the set-up, a page of the screens. "" when nothing does. */
  readonly within: string
}

/** @example whereOf('#past/2026-11-24') // { place: 'past', within: '2026-11-24' } */
export function whereOf(hash: string): Where {
  const [slug = '', ...rest] = hash.replace(/^#/, '').split('/')
  const place = PLACES.find((one) => SLUGS[one] === slug)
  return place === undefined ? { place: 'today', within: '' } : { place, within: rest.join('/') }
}

/** @example addressOf('past', '2026-11-24') // '#past/2026-11-24' */
export function addressOf(place: DeskPlace, within = ''): string {
  return `#${SLUGS[place]}${within === '' ? '' : `/${within}`}`
}
