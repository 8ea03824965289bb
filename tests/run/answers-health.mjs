// @ts-check
import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'

/** Long enough for a loaded two-core machine. */
const START_MS_MAX = 60_000

/**
 * Starts a built server on a free port with a new shop's folder, asks for its health, and stops it.
 * @param {string} node the Node to run it with
 * @param {string} server the built server's file
 * @returns {Promise<{ ok: true } | { ok: false, why: string }>}
 */
export async function answersHealth(node, server) {
  const shop = mkdtempSync(join(tmpdir(), 'boilboard-shop-'))
  const child = spawn(node, [server, '--shop', shop], {
    env: { ...process.env, PORT: '0', BIND: '127.0.0.1' },
    stdio: ['ignore', 'pipe', 'pipe'],
  })
  const closed = once(child, 'close')
  try {
    const port = await printedPort(child)
    const answer = await fetch(`http://127.0.0.1:${port}/api/health`, { signal: AbortSignal.timeout(START_MS_MAX) })
    return answer.ok ? { ok: true } : { ok: false, why: `GET /api/health answered ${answer.status}` }
  } catch (error) {
    return { ok: false, why: error instanceof Error ? error.message : String(error) }
  } finally {
    child.kill('SIGTERM')
    const late = setTimeout(() => child.kill('SIGKILL'), START_MS_MAX)
    await closed
    clearTimeout(late)
    rmSync(shop, { recursive: true, force: true })
  }
}

/**
 * @param {import('node:child_process').ChildProcessByStdio<null, import('node:stream').Readable, import('node:stream').Readable>} child
 * @returns {Promise<string>} the port in the first address that it prints
 */
function printedPort(child) {
  let printed = ''
  return new Promise((resolve, reject) => {
    const late = setTimeout(
      () => reject(new Error(`no address within ${START_MS_MAX} ms; it printed:\n${printed}`)),
      START_MS_MAX,
    )
    const settle = (/** @type {() => void} */ how) => {
      clearTimeout(late)
      how()
    }
    const read = (/** @type {Buffer} */ chunk) => {
      printed += chunk
      const port = /https?:\/\/[^\s/]+:(\d+)/.exec(printed)?.[1]
      if (port !== undefined) settle(() => resolve(port))
    }
    child.stdout.on('data', read)
    child.stderr.on('data', read)
    child.once('error', (error) => settle(() => reject(error)))
    child.once('exit', (code) => settle(() => reject(new Error(`it ended with ${code} and printed:\n${printed}`))))
  })
}
