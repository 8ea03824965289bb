// @ts-check
// Run as a program of its own: `node build.mjs FOLDER BUILD-ID`, so that the build's memory is gone when the
// server starts.
import { join } from 'node:path'
import { build as bundle } from 'esbuild'
import { build as buildPages } from 'vite'
import { ROOT } from './project.mjs'

const [folder, buildId] = process.argv.slice(2)
if (folder === undefined || buildId === undefined) throw new Error('build: node build.mjs FOLDER BUILD-ID')

process.env.BOILBOARD_BUILD_ID = buildId
await buildPages({
  configFile: join(ROOT, 'vite.config.ts'),
  logLevel: 'warn',
  build: { outDir: join(folder, 'client'), emptyOutDir: true },
})

await bundle({
  absWorkingDir: ROOT,
  // The threads for copies and advice and the commands at the terminal carry what they need, and no web server.
  entryPoints: {
    server: 'server/main.ts',
    'copies-worker': 'server/copies/copies-worker.ts',
    'work-worker': 'server/work/work-worker.ts',
    commands: 'server/commands/main.ts',
  },
  outdir: folder,
  outExtension: { '.js': '.mjs' },
  bundle: true,
  platform: 'node',
  format: 'esm',
  target: 'node20',
  // The one has its binaries beside its own files; the other is three megabytes of rules that few days ask for.
  external: ['@photostructure/sqlite', 'date-holidays'],
  define: { __BUILD_ID__: JSON.stringify(buildId) },
  // express and socket.io call require. The long name cannot collide with one that the bundler made up.
  banner: {
    js: "import { createRequire as __createRequire } from 'node:module'\nconst require = __createRequire(import.meta.url)",
  },
  logLevel: 'warning',
})
