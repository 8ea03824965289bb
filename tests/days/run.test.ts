import { spawn } from 'node:child_process'
import { text } from 'node:stream/consumers'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'

const COMMAND = fileURLToPath(new URL('./run.mjs', import.meta.url))

async function days(...args: readonly string[]): Promise<{ code: number | null; said: string }> {
  const child = spawn(process.execPath, [COMMAND, '--minutes', '12', '--seed', '1', ...args])
  const closed = new Promise<number | null>((resolve) => child.once('close', resolve))
  const [said, complaints] = await Promise.all([text(child.stdout), text(child.stderr)])
  return { code: await closed, said: said + complaints }
}

describe('npm run days', () => {
  it('given days that hold, then it says what they were made of, and ends well', async () => {
    const { code, said } = await days('--days', '3', '--jobs', '2')
    expect(said).toMatch(/^3 days: \d+ entries on disk; answers: \d+ taken, \d+ refused/)
    expect(said).toMatch(/faults: .*cut \d+/)
    expect(said).toMatch(/s of processor time a day/)
    expect(code).toBe(0)
  })

  it('given a bug, then it tells the day, the smallest such day and the line to keep, and ends badly', async () => {
    const { code, said } = await days('--days', '2', '--jobs', '1', '--bug', 'a screen loses an entry')
    expect(said).toMatch(/^seed 1: \w+-\d differs from the journal/m)
    expect(said).toMatch(/^04:\d\d:\d\d\.\d{3} {2}desk-1 {4}setLoadList: \[24 sesame, 12 poppy\]/m)
    expect(said).toContain('The smallest day that goes wrong in the same way')
    expect(said).toMatch(/\{ seed: 1, dayMinutes: 12, change: \{ untilSecond: \d+, screens: \d,/)
    expect(code).toBe(1)
  })
})
