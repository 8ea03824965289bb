/** First bytes of files that people take for CSV. */
const KINDS: readonly (readonly [start: readonly number[], what: string])[] = [
  // PKWARE's APPNOTE 6.3, section 4.3.7: workbooks are zip files.
  [[0x50, 0x4b, 0x03, 0x04], 'a spreadsheet’s workbook or a zip file'],
  // MS-CFB, section 2.2.
  [[0xd0, 0xcf, 0x11, 0xe0], 'a spreadsheet’s workbook of the older kind'],
  // ISO 32000-1, section 7.5.2.
  [[0x25, 0x50, 0x44, 0x46], 'a PDF'],
  // RFC 1952, section 2.3.1.
  [[0x1f, 0x8b], 'a gzip file'],
]

/** What a file is instead of CSV, and what would be right; null: it may be CSV. */
export function spreadsheetKind(start: Uint8Array): string | null {
  const kind = KINDS.find(([bytes]) => bytes.every((byte, index) => start[index] === byte))
  return kind === undefined ? null : `This is ${kind[1]}. Open it, save it as CSV, and put that in.`
}
