import type {
  BadRow,
  Mapping,
  MendedRows,
  NamedMeaning,
  Preview,
  SalesFile,
  TillNames,
} from '../../../shared-core/live/sales-import.ts'
import type { Done } from '../call.ts'
import { call } from '../call.ts'

/** Where the shop's API keeps files of past sales, and what can be asked of it. */

export const FILES = '/api/v1/sales/files'
export const NAMES = '/api/v1/sales/names'

export function fileAddress(id: number): string {
  return `${FILES}/${id}`
}

/** How a file would be read by another mapping; null: as it is guessed. Nothing is taken. */
export function previewBy(id: number, mapping: Mapping | null): Promise<Done<Preview>> {
  return call('POST', `${fileAddress(id)}/preview`, { mapping })
}

/** @param mapping null: go on with the one that it was begun with */
export function takeFile(id: number, mapping: Mapping | null): Promise<Done<SalesFile>> {
  return call('POST', `${fileAddress(id)}/take`, { mapping })
}

/** Takes bad rows as they were corrected. */
export function mendRows(id: number, rows: readonly Pick<BadRow, 'line' | 'text'>[]): Promise<Done<MendedRows>> {
  return call('POST', `${fileAddress(id)}/bad`, { rows })
}

export function removeFile(id: number): Promise<Done<unknown>> {
  return call('DELETE', fileAddress(id))
}

export function sayNames(names: readonly NamedMeaning[]): Promise<Done<TillNames>> {
  return call('PUT', NAMES, { names })
}
