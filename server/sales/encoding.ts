import { isUtf8 } from 'node:buffer'
import { closeSync, openSync, readSync, renameSync, statSync, writeSync } from 'node:fs'
import type { Preview } from '../../shared-core/live/sales-import.ts'

type Encoding = Preview['encoding']

const BLOCK_BYTES = 1024 * 1024
const NEW_LINE = 0x0a

/**
 * What a file is written in. Tills and spreadsheets write UTF-8, UTF-16 with its mark, or Windows-1252, in which every
 * byte is a letter: so what is no UTF-8 and has no mark is taken for that.
 * @param breathe lets others have a turn
 */
export async function encodingOf(file: string, breathe: () => Promise<unknown>): Promise<Encoding> {
  const fd = openSync(file, 'r')
  try {
    const start = Buffer.alloc(2)
    // https://www.unicode.org/faq/utf_bom.html
    if (readSync(fd, start, 0, 2, 0) === 2 && start[0] === 0xff && start[1] === 0xfe) return 'utf-16le'
    for (let from = 0; ; ) {
      const block = Buffer.alloc(BLOCK_BYTES)
      const read = readSync(fd, block, 0, BLOCK_BYTES, from)
      if (read === 0) return 'utf-8'
      const bytes = block.subarray(0, read)
      // Cut between lines, since a letter may be several bytes.
      const end = read < BLOCK_BYTES ? -1 : bytes.lastIndexOf(NEW_LINE)
      const whole = end === -1 ? bytes : bytes.subarray(0, end + 1)
      if (!isUtf8(whole)) return 'windows-1252'
      from += whole.length
      await breathe()
    }
  } finally {
    closeSync(fd)
  }
}

/** The same of a short file that is all here. */
export function encodingOfBytes(bytes: Buffer): Encoding {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return 'utf-16le'
  return isUtf8(bytes) ? 'utf-8' : 'windows-1252'
}

/** Writes a file anew in UTF-8, so that all that reads it later counts the same bytes. @returns its size */
export async function makeUtf8(file: string, encoding: Encoding, breathe: () => Promise<unknown>): Promise<number> {
  if (encoding !== 'utf-8') {
    const part = `${file}.utf-8`
    const [from, to] = [openSync(file, 'r'), openSync(part, 'w')]
    try {
      const decoder = new TextDecoder(encoding)
      const block = Buffer.alloc(BLOCK_BYTES)
      for (;;) {
        const read = readSync(from, block, 0, BLOCK_BYTES, null)
        writeSync(to, decoder.decode(block.subarray(0, read), { stream: read > 0 }))
        if (read === 0) break
        await breathe()
      }
    } finally {
      closeSync(from)
      closeSync(to)
    }
    renameSync(part, file)
  }
  return statSync(file).size
}
