import { readdirSync } from 'node:fs'
import { basename } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { Plugin, Rolldown } from 'vite'
import { defineConfig } from 'vite'

const client = fileURLToPath(new URL('./client/', import.meta.url))

/** Every page in client/ is a screen of its own. */
const pages = readdirSync(client)
  .filter((name) => name.endsWith('.html'))
  .map((name) => `${client}${name}`)

/** The pages that need a module at their opening; what is only fetched when gone to is not counted. */
function pagesOf(id: string, moduleInfo: Rolldown.GetModuleInfo, seen = new Set<string>()): Set<string> {
  if (seen.has(id)) return new Set()
  seen.add(id)
  if (id.endsWith('.html')) return new Set([basename(id, '.html')])
  const importers = moduleInfo(id)?.importers ?? []
  return new Set(importers.flatMap((one) => [...pagesOf(one, moduleInfo, seen)]))
}

const NO_TRANSPORT = '\0no-transport'

/** Screens speak websocket alone (`client/live/socket-link.ts`): the library's other ways need not travel to them. */
const websocketOnly: Plugin = {
  name: 'websocket-only',
  enforce: 'pre',
  resolveId: (source, importer = '') =>
    importer.includes('/engine.io-client/') && /\/(polling-xhr|webtransport)(\.node)?\.js$/.test(source)
      ? NO_TRANSPORT
      : null,
  load: (id) => (id === NO_TRANSPORT ? 'export const XHR = undefined, WT = undefined' : null),
}

export default defineConfig({
  root: client,
  plugins: [websocketOnly],
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  define: { __BUILD_ID__: JSON.stringify(process.env.BOILBOARD_BUILD_ID ?? 'development') },
  build: {
    outDir: fileURLToPath(new URL('./dist/client/', import.meta.url)),
    emptyOutDir: true,
    // Tablets of 2020: the oldest that a shop may still hang on a wall.
    target: ['es2020', 'chrome87', 'safari14', 'firefox78'],
    // Nothing inline: the server's content policy forbids it.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    rolldownOptions: {
      input: pages,
      output: {
        // One file for what the same pages share. By itself the bundler also sets apart what each later part needs of it,
        // though its page has that already: twenty small files, which gzip makes smaller less well. What most pages share
        // goes first, as a file takes along what its modules import.
        codeSplitting: {
          groups: pages.map((_, fewer) => ({
            debugName: `pages but ${fewer}`,
            name: (id, bundle) => {
              const sharing = [...pagesOf(id, (one) => bundle.getModuleInfo(one))].sort()
              return sharing.length > 1 && sharing.length === pages.length - fewer ? sharing.join('-') : null
            },
          })),
        },
      },
    },
  },
})
