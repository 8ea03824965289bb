import { existsSync, readFileSync } from 'node:fs'
import { endianness } from 'node:os'

/**
 * Whether the log beside a journal's file (SQLite's WAL: commits that are not in the file itself yet) still holds all
 * that was committed. SQLite itself reads a log up to the first thing that is not right and drops the rest without a
 * word, since a power cut leaves a half-written end: right for what was never acknowledged, silent loss for all else. So
 * this looks before SQLite opens the file, at what no power cut and no kill can leave:
 *
 * - a broken frame with a whole commit and then more behind it: with synchronous=FULL the next transaction is written
 *   only after the one before is on disk;
 * - fewer frames than the index of the log says were committed (the -shm file, which outlives a kill; after a power cut
 *   it is as old as the disk has it, never newer than the log);
 * - a log without its file, or an index that names commits without a log.
 *
 * An end that is cut off where the index is gone too cannot be told from a log that ends there; only a copy of the
 * journal that is further on can. Formats: https://sqlite.org/walformat.html.
 * @param file the journal's; the log is beside it
 * @returns what is wrong, as the end of a sentence; null when nothing is
 */
export function logTrouble(file: string): string | null {
  const log = read(`${file}-wal`)
  if (log !== null && log.length > 0 && !existsSync(file)) return 'the file is gone, its log of changes is there'
  const index = readIndex(read(`${file}-shm`))
  // What was folded into the file itself is not missed.
  const isMissed = index !== null && index.lastFrame > index.foldedFrames
  if (log === null || log.length < HEADER_BYTES) return isMissed ? 'its log of the newest changes is gone' : null
  const whole = readLog(log)
  if (whole === null) return isMissed ? 'its log of the newest changes is damaged at its beginning' : null
  if (whole.isCommitLost) return `its log of the newest changes is damaged at frame ${whole.frames + 1}`
  const isSameLog = index?.salts.equals(log.subarray(16, 24)) === true
  if (isMissed && isSameLog && index.lastFrame > whole.committedFrames)
    return `its log ends after frame ${whole.committedFrames}, and ${index.lastFrame} were written`
  return null
}

const HEADER_BYTES = 32
const FRAME_HEADER_BYTES = 24
/** The lowest bit says in which order the checksums read their words: set for big-endian. */
const MAGIC = 0x377f0682
const isBigEndian = endianness() === 'BE'

interface LogRead {
  /** Frames that are right, from the first one on. */
  readonly frames: number
  /** The last of them that ends a transaction. */
  readonly committedFrames: number
  /** A transaction behind the last right frame was written whole, and another after it. */
  readonly isCommitLost: boolean
}

/** @returns null when it does not begin as a log does */
function readLog(log: Buffer): LogRead | null {
  const magic = log.readUInt32BE(0)
  if ((magic & ~1) !== MAGIC) return null
  const sums = new Sums((magic & 1) === 1)
  sums.add(log.subarray(0, 24))
  if (!sums.equal(log, 24)) return null
  const frameBytes = FRAME_HEADER_BYTES + log.readUInt32BE(8)
  const all = Math.floor((log.length - HEADER_BYTES) / frameBytes)
  const frameAt = (frame: number) =>
    log.subarray(HEADER_BYTES + frame * frameBytes, HEADER_BYTES + (frame + 1) * frameBytes)
  const isOfThisLog = (frame: Buffer) => frame.compare(log, 16, 24, 8, 16) === 0
  const isCommit = (frame: Buffer) => frame.readUInt32BE(4) !== 0
  let frames = 0
  let committedFrames = 0
  while (frames < all) {
    const frame = frameAt(frames)
    sums.add(frame.subarray(0, 8))
    sums.add(frame.subarray(FRAME_HEADER_BYTES))
    if (!isOfThisLog(frame) || !sums.equal(frame, 16)) break
    frames += 1
    if (isCommit(frame)) committedFrames = frames
  }
  const behind = Array.from({ length: all - frames }, (_, at) => frameAt(frames + at))
  const lost = behind.findIndex((frame) => isOfThisLog(frame) && isCommit(frame))
  return { frames, committedFrames, isCommitLost: lost !== -1 && behind.slice(lost + 1).some(isOfThisLog) }
}

interface IndexRead {
  readonly lastFrame: number
  readonly foldedFrames: number
  readonly salts: Buffer
}

/** The header of the log's index, kept twice; null when it cannot be trusted. */
function readIndex(index: Buffer | null): IndexRead | null {
  if (index === null || index.length < 136 || !index.subarray(0, 48).equals(index.subarray(48, 96))) return null
  const sums = new Sums(isBigEndian)
  sums.add(index.subarray(0, 40))
  const word = (at: number) => (isBigEndian ? index.readUInt32BE(at) : index.readUInt32LE(at))
  // The index keeps its words as this machine does.
  if (index[12] !== 1 || sums.first !== word(40) || sums.second !== word(44)) return null
  return { lastFrame: word(16), foldedFrames: word(96), salts: index.subarray(32, 40) }
}

/** The two running sums of a log, over pairs of 32-bit words. */
class Sums {
  readonly #isBig: boolean
  #first = 0
  #second = 0

  constructor(isBig: boolean) {
    this.#isBig = isBig
  }

  get first(): number {
    return this.#first >>> 0
  }

  get second(): number {
    return this.#second >>> 0
  }

  /** @param bytes a multiple of eight */
  add(bytes: Buffer): void {
    const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length)
    const isLittle = !this.#isBig
    for (let at = 0; at < bytes.length; at += 8) {
      this.#first = (this.#first + view.getInt32(at, isLittle) + this.#second) | 0
      this.#second = (this.#second + view.getInt32(at + 4, isLittle) + this.#first) | 0
    }
  }

  /** Whether they stand at a place of the log, where they are always big-endian. */
  equal(log: Buffer, at: number): boolean {
    return log.readUInt32BE(at) === this.first && log.readUInt32BE(at + 4) === this.second
  }
}

/** Null when it is not there, or no more: whoever closes a journal last takes its log away. */
function read(file: string): Buffer | null {
  try {
    return readFileSync(file)
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return null
    throw error
  }
}
