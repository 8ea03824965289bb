import { readFileSync } from 'node:fs'
import type { Problem } from '../../shared-core/shop/problem.ts'
import { parseSetUpFile } from '../../shared-core/shop/set-up-file.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import { isZone } from '../live/shop-clock.ts'

export type SetUpRead =
  | { readonly ok: true; readonly shop: Shop }
  | { readonly ok: false; readonly problems: readonly Problem[] }

/** A set-up file from disk. What is wrong with it is told with its place. */
export function readSetUp(file: string): SetUpRead {
  try {
    return parseSetUpFile(JSON.parse(readFileSync(file, 'utf8')), { isZone })
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error)
    const right = 'A JSON file in the form of /api/v1/set-up.schema.json.'
    return { ok: false, problems: [{ path: file, wrong: `It cannot be read: ${why}.`, right }] }
  }
}
