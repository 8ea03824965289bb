import { brotliDecompressSync } from 'node:zlib'

/** Tags that WOFF2 writes as a number, in its order, as far as they are looked up here or come before. */
const KNOWN_TAGS = ['cmap', 'head', 'hhea', 'hmtx', 'maxp', 'name', 'OS/2', 'post', 'cvt ', 'fpgm', 'glyf', 'loca']
const OWN_TAG = 63
const HEADER_BYTES = 48

/**
 * The tables of a WOFF2 font that are stored as they are (`glyf`, `loca` and sometimes `hmtx` are rewritten, and come
 * as they lie). Source: W3C WOFF File Format 2.0, sections 4.1 and 5.
 */
export function fontTables(woff2: Buffer): ReadonlyMap<string, Buffer> {
  if (woff2.toString('latin1', 0, 4) !== 'wOF2') throw new Error('not a WOFF2 file')
  const reader = { bytes: woff2, at: HEADER_BYTES }
  const entries = Array.from({ length: woff2.readUInt16BE(12) }, () => directoryEntry(reader))
  const packed = woff2.subarray(reader.at, reader.at + woff2.readUInt32BE(20))
  const stream = brotliDecompressSync(packed)
  const tables = new Map<string, Buffer>()
  let at = 0
  for (const { tag, length } of entries) {
    tables.set(tag, stream.subarray(at, at + length))
    at += length
  }
  return tables
}

interface Reader {
  readonly bytes: Buffer
  at: number
}

function directoryEntry(reader: Reader): { tag: string; length: number } {
  const flags = byte(reader)
  const number = flags & 63
  const transform = flags >> 6
  const tag = number === OWN_TAG ? ownTag(reader) : (KNOWN_TAGS[number] ?? `tag ${number}`)
  const length = base128(reader)
  // For the outlines version 3 means "as it is", for all others version 0 does.
  const isRewritten = tag === 'glyf' || tag === 'loca' ? transform !== 3 : transform !== 0
  return { tag, length: isRewritten ? base128(reader) : length }
}

function ownTag(reader: Reader): string {
  reader.at += 4
  return reader.bytes.toString('latin1', reader.at - 4, reader.at)
}

function base128(reader: Reader): number {
  let value = 0
  for (let digits = 0; digits < 5; digits++) {
    const next = byte(reader)
    value = value * 128 + (next & 127)
    if (next < 128) return value
  }
  throw new Error('a length in the font has more than five bytes')
}

function byte(reader: Reader): number {
  return reader.bytes.readUInt8(reader.at++)
}
