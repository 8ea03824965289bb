import { readdirSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vite'

const client = fileURLToPath(new URL('./client/', import.meta.url))

/** Every page in client/ is a screen of its own. */
const pages = readdirSync(client)
  .filter((name) => name.endsWith('.html'))
  .map((name) => `${client}${name}`)

export default defineConfig({
  root: client,
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
    rolldownOptions: { input: pages },
  },
})
