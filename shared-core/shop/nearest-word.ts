/**
 * The word that was probably meant: the nearest by edit distance, if it is near at all (a third of its length, one
 * letter at least). Small and capital letters are the same. Of two equally near the first wins.
 * @example nearestWord('naem', ['size', 'name']) // 'name'
 * @example nearestWord('xyz', ['size', 'name']) // null
 */
export function nearestWord(word: string, known: readonly string[]): string | null {
  const short = word.slice(0, LETTERS_MAX).toLowerCase()
  let best: { word: string; distance: number } | null = null
  for (const candidate of known) {
    const distance = editDistance(short, candidate.toLowerCase())
    if (distance > Math.max(1, Math.floor(candidate.length / 3))) continue
    if (best === null || distance < best.distance) best = { word: candidate, distance }
  }
  return best?.word ?? null
}

/** Longer words are cut before they are compared: the work grows with the square. */
const LETTERS_MAX = 64

/** Letters put in, left out, exchanged, or swapped with their neighbour (optimal string alignment). */
function editDistance(a: string, b: string): number {
  const rows: number[][] = [Array.from({ length: b.length + 1 }, (_, j) => j)]
  const at = (i: number, j: number) => rows[i]?.[j] ?? 0
  for (let i = 1; i <= a.length; i++) {
    const row = [i]
    rows.push(row)
    for (let j = 1; j <= b.length; j++) {
      const exchanged = at(i - 1, j - 1) + (a[i - 1] === b[j - 1] ? 0 : 1)
      const isSwap = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]
      const swapped = isSwap ? at(i - 2, j - 2) + 1 : exchanged
      row.push(Math.min(exchanged, swapped, at(i - 1, j) + 1, at(i, j - 1) + 1))
    }
  }
  return at(a.length, b.length)
}
