import { join } from 'node:path'
import type { Express } from 'express'
import express from 'express'

const PAGES = ['wall', 'bench', 'counter', 'desk'] as const
const A_YEAR_MS = 365 * 86_400_000

/** The screens' pages. Built files carry a hash in their names and are kept; pages are asked for anew each time. */
export function pages(app: Express, folder: string): void {
  app.use('/assets', express.static(join(folder, 'assets'), { immutable: true, maxAge: A_YEAR_MS, fallthrough: false }))
  app.get('/', (_request, response) => response.sendFile(join(folder, 'index.html'), { maxAge: 0 }))
  for (const page of PAGES) {
    app.get(`/${page}`, (_request, response) => response.sendFile(join(folder, `${page}.html`), { maxAge: 0 }))
  }
  app.use(express.static(folder, { maxAge: 0, index: false }))
}
