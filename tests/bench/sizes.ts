import { readFileSync } from 'node:fs'
import { gzipSync } from 'node:zlib'

/** JavaScript of each screen as it travels: the page's own modules and all that they import, gzipped. */
const AIM_KB = 120
const CLIENT = 'dist/client'

console.log(`\nJavaScript by screen, gzipped (aim ≤ ${AIM_KB} kB the largest)`)
for (const page of ['index', 'wall', 'bench', 'counter', 'desk']) {
  const html = readFileSync(`${CLIENT}/${page}.html`, 'utf8')
  const files = new Set<string>()
  for (const [, file] of html.matchAll(/(?:src|href)="(\/assets\/[^"]+\.js)"/g))
    if (file !== undefined) collect(file, files)
  const bytes = [...files].reduce((sum, file) => sum + gzipSync(readFileSync(`${CLIENT}${file}`)).length, 0)
  const styles = [...html.matchAll(/href="(\/assets\/[^"]+\.css)"/g)].map(
    ([, file]) => gzipSync(readFileSync(`${CLIENT}${file}`)).length,
  )
  console.log(
    `  ${page.padEnd(8)} ${(bytes / 1024).toFixed(1)} kB in ${files.size} files, styles ${(styles.reduce((sum, one) => sum + one, 0) / 1024).toFixed(1)} kB`,
  )
}

function collect(file: string, files: Set<string>): void {
  if (files.has(file)) return
  files.add(file)
  const code = readFileSync(`${CLIENT}${file}`, 'utf8')
  for (const [, imported] of code.matchAll(/(?:from|import)\s*\(?["']\.\/([^"']+\.js)["']/g))
    collect(`/assets/${imported}`, files)
}
