import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { ownCertificate } from '../../server/operation/certificate.ts'
import { ServerRun } from '../server/support/server-program.ts'
import { expect, test } from './support/shop-server.ts'

const DAY_MS = 86_400_000

// The authority is this test's own, which no browser trusts; that it is trusted once it is told is tested without one.
test.use({ ignoreHTTPSErrors: true, viewport: { width: 1440, height: 900 } })

test('[N7, N11] given a shop that speaks https with a certificate about to end, when a desk opens it by plain http, then it is sent to https, is live there, and says so in its language', async ({
  page,
}) => {
  const folder = mkdtempSync(join(tmpdir(), 'boilboard-https-'))
  await ownCertificate({ folder, hosts: ['localhost', '127.0.0.1'], nowMs: Date.now() - 350 * DAY_MS })
  const files = ['--cert', join(folder, 'server.pem'), '--key', join(folder, 'server-key.pem')]
  const args = ['--shop', join(folder, 'shop'), ...files]
  const server = new ServerRun({ program: 'dist/server.mjs', args, cwd: process.cwd() })
  try {
    const port = await server.port()
    await page.goto(`http://localhost:${port}/desk`)
    expect(page.url()).toMatch(new RegExp(`^https://localhost:${port}/desk`))
    const reason = page.locator('.desk-health')
    await expect(reason).toHaveText(/^Look at the server: The certificate for https ends in 14 days\./)
    expect(await page.evaluate(() => window.isSecureContext)).toBe(true)
    // What is shown came over the socket.
    await expect(page.locator('.desk-nav')).toBeVisible()
    await page.locator('.desk-head select').selectOption('es')
    await expect(reason).toHaveText(/^Revise el servidor: El certificado de https termina en 14 días\./)
    await page.route('**/api/health', (route) => route.fulfill({ json: { status: 'ok', reasons: [] } }))
    await page.reload()
    await expect(page.locator('.desk-nav')).toBeVisible()
    await expect(reason).toHaveCount(0)
  } finally {
    await server.kill('SIGTERM')
    rmSync(folder, { recursive: true, force: true })
  }
})
