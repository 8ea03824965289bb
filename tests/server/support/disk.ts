import { execFileSync } from 'node:child_process'
import { mkdirSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'

/** A disk that can be made full and given space again while a server runs on it. */
export interface Disk {
  /** Where the server's folder goes. */
  readonly folder: string
  /** @param pid of the server; 0: not running */
  fill(pid: number): void
  empty(pid: number): void
  /** What starts a server on the full disk. */
  readonly throughFull: readonly string[]
  release(): void
}

const MOUNT_BYTES = 8 * 1024 * 1024
/** A file of this size is there already; no file grows beyond it. */
const LIMIT_BYTES = 4_096

/**
 * A limit on the size of the process's files: writes beyond it fail (EFBIG), as they do on a full disk (ENOSPC). It is
 * what everybody may set, see prlimit(1) and getrlimit(2).
 */
export function limitedDisk(folder: string): Disk {
  const limit = (pid: number, bytes: string) => {
    if (pid !== 0) execFileSync('prlimit', [`--pid=${pid}`, `--fsize=${bytes}:unlimited`])
  }
  return {
    folder,
    fill: (pid) => limit(pid, String(LIMIT_BYTES)),
    empty: (pid) => limit(pid, 'unlimited'),
    throughFull: ['prlimit', `--fsize=${LIMIT_BYTES}:unlimited`],
    release: () => undefined,
  }
}

/** A small file system in memory that is really full; null where this user may not mount one. */
export function mountedDisk(folder: string): Disk | null {
  const at = join(folder, 'mounted')
  try {
    mkdirSync(at)
    execFileSync('mount', ['-t', 'tmpfs', '-o', `size=${MOUNT_BYTES}`, 'tmpfs', at], { stdio: 'ignore' })
  } catch {
    return null
  }
  const filling = join(at, 'filling')
  return {
    folder: at,
    fill: () => {
      let size = MOUNT_BYTES
      // Down to the last page: what does not fit any more is tried in halves.
      for (let part = 0; size >= 512; part += 1) {
        try {
          writeFileSync(`${filling}-${part}`, Buffer.alloc(size))
        } catch {
          size /= 2
        }
      }
    },
    empty: () => {
      for (let part = 0; part < 64; part += 1) rmSync(`${filling}-${part}`, { force: true })
    },
    throughFull: [],
    release: () => execFileSync('umount', [at]),
  }
}
