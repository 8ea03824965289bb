// @ts-check
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { buildIfNeeded } from './build-if-needed.mjs'
import { installIfNeeded } from './install.mjs'
import { orComplain, ROOT } from './project.mjs'

/**
 * Installs and builds what is needed, then becomes the server: it runs in this process, so that signals and the exit
 * code are its own and nothing can be left running behind.
 * @param {readonly string[]} args handed on to the server as they are
 */
export async function runServer(args) {
  await orComplain(async () => {
    await installIfNeeded(ROOT)
    await buildIfNeeded(ROOT)
  })
  const server = join(ROOT, 'dist', 'server.mjs')
  process.argv = [process.execPath, server, ...args]
  await import(pathToFileURL(server).href)
}
