import { createHash } from 'node:crypto'
import { createReadStream, readFileSync, statSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { pipeline } from 'node:stream/promises'
import * as z from 'zod'
import { putInPlace, sync } from './journal-file.ts'

/** What is known of each daily archive of a folder, in a file beside them that people can read. */
const ARCHIVE = z.object({
  file: z.string(),
  /** The shop's date on which it was made. */
  date: z.iso.date(),
  atMs: z.int(),
  bytes: z.int(),
  seq: z.int(),
  /** Of the state that it folds to. */
  hash: z.string(),
  /** Of the file, to find out later whether it is still as it was. */
  sha256: z.string(),
  /** When the file was last found to be as it was. */
  checkedAtMs: z.int(),
  isGood: z.boolean(),
})
const MANIFEST = z.object({ form: z.literal(1), archives: z.array(ARCHIVE) })

export type Archive = Readonly<z.infer<typeof ARCHIVE>>

const NAME = 'archives.json'

/** Oldest first. Where there is no list, or one that cannot be read, there is none: archives are then looked for anew. */
export function readManifest(folder: string): readonly Archive[] {
  try {
    const { archives } = MANIFEST.parse(JSON.parse(readFileSync(join(folder, NAME), 'utf8')))
    return archives.sort((one, other) => (one.date < other.date ? -1 : 1))
  } catch {
    return []
  }
}

/** On disk, whole or not at all, when this returns. */
export function writeManifest(folder: string, archives: readonly Archive[]): void {
  const part = join(folder, `${NAME}.part`)
  writeFileSync(part, `${JSON.stringify({ form: 1, archives }, null, 2)}\n`)
  sync(part)
  putInPlace(part, join(folder, NAME))
}

/** Whether the file is there, in its length: what a glance can tell. */
export function isThere(folder: string, { file, bytes }: Archive): boolean {
  return statSync(join(folder, file), { throwIfNoEntry: false })?.size === bytes
}

/** SHA-256 of a file, as hex. */
export async function sha256Of(file: string): Promise<string> {
  const hash = createHash('sha256')
  await pipeline(createReadStream(file), hash)
  return hash.digest('hex')
}
