import { readdirSync, readFileSync } from 'node:fs'
import { extname, join } from 'node:path'
import type { Express } from 'express'

const PAGES = ['wall', 'bench', 'counter', 'desk']
const FILE_OF = new Map([['/', '/index.html'], ...PAGES.map((page) => [`/${page}`, `/${page}.html`] as const)])
const A_YEAR_S = 365 * 86_400

/**
 * The screens' pages. Built files carry a hash in their names and are kept; pages are asked for anew each time. All are
 * read at the start and served from memory: when a newer build is put in place under a running server, its screens must
 * not load pages that fold otherwise than it does.
 */
export function pages(app: Express, folder: string): void {
  const files = readAll(folder, '')
  app.get('/{*path}', (request, response, next) => {
    const path = FILE_OF.get(request.path) ?? request.path
    const file = files.get(path)
    if (file === undefined) return next()
    const isKept = path.startsWith('/assets/')
    response.set('cache-control', isKept ? `public, max-age=${A_YEAR_S}, immutable` : 'public, max-age=0')
    response.type(extname(path)).send(file)
  })
}

/** Files by their path from the folder, with a slash first; none where nothing is built. */
function readAll(folder: string, under: string): Map<string, Buffer> {
  const files = new Map<string, Buffer>()
  for (const entry of list(join(folder, under))) {
    const path = `${under}/${entry.name}`
    if (entry.isFile()) files.set(path, readFileSync(join(folder, path)))
    else if (entry.isDirectory()) for (const [inner, file] of readAll(folder, path)) files.set(inner, file)
  }
  return files
}

function list(folder: string) {
  try {
    return readdirSync(folder, { withFileTypes: true })
  } catch {
    return []
  }
}
