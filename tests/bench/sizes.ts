import { readFileSync } from 'node:fs'
import { gzipSync } from 'node:zlib'

/** JavaScript of each screen as it travels: the page's own modules and all that they import, gzipped. */
const AIM_KB = 120
const CLIENT = 'dist/client'

console.log(
  `\nJavaScript by screen, gzipped (aim ≤ ${AIM_KB} kB at the opening; later: places that are fetched when gone to)`,
)
for (const page of ['index', 'wall', 'bench', 'counter', 'desk']) {
  const html = readFileSync(`${CLIENT}/${page}.html`, 'utf8')
  const [first, later] = [new Set<string>(), new Set<string>()]
  for (const [, file] of html.matchAll(/(?:src|href)="(\/assets\/[^"]+\.js)"/g))
    if (file !== undefined) collect(file, first, later)
  const styles = [...html.matchAll(/href="(\/assets\/[^"]+\.css)"/g)].flatMap(([, file]) => file ?? [])
  console.log(
    `  ${page.padEnd(8)} ${kB(first)} in ${first.size} files, styles ${kB(styles)}, later ${kB([...later].filter((file) => !first.has(file)))}`,
  )
}

function kB(files: Iterable<string>): string {
  const bytes = [...files].reduce((sum, file) => sum + gzipSync(readFileSync(`${CLIENT}${file}`)).length, 0)
  return `${(bytes / 1024).toFixed(1)} kB`
}

/** What a file imports is fetched with it; what it imports when it is needed, and what that imports, comes later. */
function collect(file: string, first: Set<string>, later: Set<string>): void {
  if (first.has(file)) return
  first.add(file)
  const code = readFileSync(`${CLIENT}${file}`, 'utf8')
  for (const [, imported] of code.matchAll(/(?:from|import)\s*["']\.\/([^"']+\.js)["']/g))
    collect(`/assets/${imported}`, first, later)
  for (const [, imported] of code.matchAll(/import\(\s*["'`]\.\/([^"'`]+\.js)["'`]/g))
    if (!later.has(`/assets/${imported}`)) collect(`/assets/${imported}`, later, later)
}
