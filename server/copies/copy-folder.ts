import { existsSync, mkdirSync, readFileSync, statSync, writeFileSync } from 'node:fs'
import { dirname, join, resolve } from 'node:path'
import { CopyError } from './copy-words.ts'

/** The running copy in the copies' folder. */
export const COPY_FILE = 'journal.sqlite'
/** Who may come in: copied whole when it has changed. */
export const DEVICES_FILE = 'devices.sqlite'
/**
 * In the shop's folder: where its copies were kept the last time, so that a restore finds them by itself; in a second line
 * whether that was on a drive of its own.
 */
const NOTE = 'copies-folder.txt'
const OWN_DRIVE = 'on a drive of its own'
/** What a shop's folder has beside its journal, and a folder of copies never. */
const OF_A_SHOP = ['journal.sqlite-end', 'history.sqlite'] as const

/** @param chosen by --copies; null: where they were the last time, else a folder in the shop's own */
export function copiesFolderOf(shopFolder: string, chosen: string | null): string {
  if (chosen !== null) return resolve(chosen)
  const noted = readNote(shopFolder)
  if (noted !== null) return noted.folder
  return join(resolve(shopFolder), 'copies')
}

/** A folder that was not chosen is not written down: the shop's own may be carried elsewhere. */
export function noteCopiesFolder(shopFolder: string, chosen: string | null): void {
  if (chosen !== null && readNote(shopFolder)?.folder !== resolve(chosen)) writeNote(shopFolder, [resolve(chosen)])
}

/** From now on copies in this folder, where it was chosen, are not made on the journal's own drive any more. */
export function noteOwnDrive(shopFolder: string, folder: string): void {
  const noted = readNote(shopFolder)
  if (noted?.folder === folder && !noted.isOwnDrive) writeNote(shopFolder, [folder, OWN_DRIVE])
}

export function wasOnOwnDrive(shopFolder: string, folder: string): boolean {
  const noted = readNote(shopFolder)
  return noted?.folder === folder && noted.isOwnDrive
}

function readNote(shopFolder: string): { readonly folder: string; readonly isOwnDrive: boolean } | null {
  try {
    const [folder = '', drive = ''] = readFileSync(join(shopFolder, NOTE), 'utf8').split('\n')
    return folder.trim() === '' ? null : { folder: folder.trim(), isOwnDrive: drive.trim() === OWN_DRIVE }
  } catch {
    // None was chosen yet.
    return null
  }
}

function writeNote(shopFolder: string, lines: readonly string[]): void {
  writeFileSync(join(shopFolder, NOTE), `${lines.join('\n')}\n`)
}

/**
 * Makes the folder where its parent is there, and no more: the way to a drive that is not plugged in would be made on the
 * very disk that the copies are to outlive. A shop's folder is left alone: its journal has the very name of a copy.
 * @throws CopyError
 */
export function makeCopiesFolder(folder: string): void {
  if (OF_A_SHOP.some((name) => existsSync(join(folder, name))))
    throw new CopyError(`${folder} is a shop's own folder. Give the copies one of their own with --copies.`)
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
