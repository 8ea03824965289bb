import { mkdirSync, readFileSync, statSync, writeFileSync } from 'node:fs'
import { dirname, join, resolve } from 'node:path'
import { CopyError } from './copy-words.ts'

/** The running copy in the copies' folder. */
export const COPY_FILE = 'journal.sqlite'
/** Who may come in: copied whole when it has changed. */
export const DEVICES_FILE = 'devices.sqlite'
/** In the shop's folder: where its copies were kept the last time, so that a restore finds them by itself. */
const NOTE = 'copies-folder.txt'

/** @param chosen by --copies; null: where they were the last time, else a folder in the shop's own */
export function copiesFolderOf(shopFolder: string, chosen: string | null): string {
  if (chosen !== null) return resolve(chosen)
  try {
    const noted = readFileSync(join(shopFolder, NOTE), 'utf8').trim()
    if (noted !== '') return noted
  } catch {
    // None was chosen yet.
  }
  return join(resolve(shopFolder), 'copies')
}

/** A folder that was not chosen is not written down: the shop's own may be carried elsewhere. */
export function noteCopiesFolder(shopFolder: string, chosen: string | null): void {
  if (chosen !== null) writeFileSync(join(shopFolder, NOTE), `${resolve(chosen)}\n`)
}

/**
 * Makes the folder where its parent is there, and no more: the way to a drive that is not plugged in would be made on the
 * very disk that the copies are to outlive.
 * @throws CopyError
 */
export function makeCopiesFolder(folder: string): void {
  if (statSync(folder, { throwIfNoEntry: false })?.isDirectory() === true) return
  if (statSync(dirname(folder), { throwIfNoEntry: false })?.isDirectory() !== true)
    throw new CopyError(`${dirname(folder)} is not there. Is its drive plugged in?`)
  mkdirSync(folder)
}

/** On one drive with the journal a copy does not outlive it. */
export function isSameDrive(one: string, other: string): boolean {
  const device = (path: string) => statSync(path, { throwIfNoEntry: false })?.dev
  return device(one) === device(other)
}
