/**
 * Dark modules as the `d` of one SVG path, a rectangle for each run along a row.
 * @param modules rows from the top; true is dark
 */
export function qrPath(modules: readonly (readonly boolean[])[]): string {
  return modules.map((row, y) => rowPath(row, y)).join('')
}

function rowPath(row: readonly boolean[], y: number): string {
  let path = ''
  for (let x = 0; x < row.length; x++) {
    if (row[x] !== true) continue
    const from = x
    while (row[x + 1] === true) x++
    path += `M${from} ${y}h${x - from + 1}v1h-${x - from + 1}z`
  }
  return path
}
