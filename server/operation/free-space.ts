import { statfs } from 'node:fs/promises'

const MB = 1024 * 1024

/**
 * What this user may still write to the disk of a folder.
 * @returns whole MB (1,048,576 bytes), rounded down; null when the folder cannot be asked, e.g. a drive that is gone
 */
export async function freeMbOf(folder: string): Promise<number | null> {
  try {
    const { bavail, bsize } = await statfs(folder)
    return Math.floor((bavail * bsize) / MB)
  } catch {
    return null
  }
}
