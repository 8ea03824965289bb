/** Most that are listed at once: a few more letters find the rest. */
const FOUND_MAX = 6

export interface FoundZones {
  readonly zones: readonly string[]
  readonly hasMore: boolean
}

/**
 * Time zones of which some word begins as is typed, or that contain it; the former first. Accents and case do not count.
 * @param all left out: those of this browser
 * @example foundZones('chic') // America/Chicago
 */
export function foundZones(typed: string, all: readonly string[] = browserZones()): FoundZones {
  const sought = plain(typed)
  if (sought === '') return { zones: [], hasMore: false }
  const begin = all.filter((zone) => ` ${plain(zone)}`.includes(` ${sought}`))
  const contain = all.filter((zone) => !begin.includes(zone) && plain(zone).includes(sought))
  const found = [...begin, ...contain]
  return { zones: found.slice(0, FOUND_MAX), hasMore: found.length > FOUND_MAX }
}

/** As people read it. @example "America / New York" */
export function zoneText(zone: string): string {
  return zone.replace(/_/g, ' ').replace(/\//g, ' / ')
}

/** Where this device is; null where the browser does not say. */
export function deviceZone(): string | null {
  const { timeZone } = Intl.DateTimeFormat().resolvedOptions()
  return timeZone === undefined || timeZone === '' ? null : timeZone
}

/** Browsers of 2022 list their zones; the types that screens are checked with are older. */
type MaybeListing = typeof Intl & { readonly supportedValuesOf?: (key: 'timeZone') => readonly string[] }

/** A browser too old for the list knows at least its own zone and the plain ones. */
function browserZones(): readonly string[] {
  const { supportedValuesOf } = Intl as MaybeListing
  const listed = supportedValuesOf?.('timeZone') ?? []
  const here = deviceZone()
  return [...new Set([...listed, ...(here === null ? [] : [here]), 'UTC'])]
}

function plain(text: string): string {
  return text
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[_/\s]+/g, ' ')
    .trim()
}
