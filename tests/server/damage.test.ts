import { mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { logTrouble } from '../../server/journal/log-check.ts'
import { loadSqlite } from '../../server/journal/sqlite.ts'
import { Chance } from '../days/chance.ts'
import type { Damage } from '../kills/damage.ts'
import { DAMAGE_KINDS, drawDamage } from '../kills/damage.ts'
import { badOnes, judgeDamages } from '../kills/damage-run.ts'
import type { Files } from '../kills/victim.ts'
import { makeVictim } from '../kills/victim.ts'
import { tempFolder } from './support/temp-folder.ts'

/** A loaded machine may be slow; time only says "hung". */
const HUNG_MS = 90_000
/** Each kind so many times; `npm run kills -- --damage N` does more. */
const TIMES = 8
/** Every kind comes up: it shares no factor with their number. */
const VERIFY_EVERY = 7

describe('a journal whose files are damaged', { timeout: HUNG_MS }, () => {
  it(`[W17] given ${DAMAGE_KINDS * TIMES} damages of ${DAMAGE_KINDS} kinds, when started, then nothing is missing, or it is told in words which file and what to do`, async () => {
    const judged = await judgeDamages(DAMAGE_KINDS * TIMES, 20_261_126, VERIFY_EVERY)
    expect(badOnes(judged)).toEqual([])
    const refused = judged.filter(({ verdict }) => verdict.kind === 'refused')
    // Most hurt; a bit in a free page does not, and a log that comes back whole heals what lies under it.
    expect(refused.length).toBeGreaterThan(judged.length / 2)
    expect(refused.length).toBeLessThan(judged.length)
  })
})

describe('the log beside a journal', { timeout: HUNG_MS }, () => {
  it('[W18] given a log that lost what was committed, then that is told before SQLite drops the rest; one that a kill left is good', async () => {
    const folder = tempFolder()
    const victim = await makeVictim(await loadSqlite(), join(folder, 'good'))
    const chance = new Chance(3)
    const troubleOf = (files: Files, name: string) => {
      const file = join(folder, name, 'journal.sqlite')
      mkdirSync(join(folder, name))
      for (const [end, bytes] of files) writeFileSync(`${file}${end}`, bytes)
      return logTrouble(file)
    }
    for (const [name, files] of Object.entries({ closed: victim.closed, killed: victim.killed, older: victim.older }))
      expect([name, troubleOf(files, name)]).toEqual([name, null])
    const log = (kind: number): Damage => drawDamage(victim, kind, chance)
    const hurt = Array.from({ length: DAMAGE_KINDS }, (_, kind) => log(kind)).filter(({ what }) =>
      /log|-wal/.test(what),
    )
    expect(hurt.length).toBeGreaterThan(5)
    hurt.forEach(({ what, files }, at) => {
      // Without its index nothing here knows how long the log was; the mark of the journal's end does.
      const isKnown = files.has('-shm') && !what.startsWith('under')
      expect([what, troubleOf(files, `hurt-${at}`) !== null]).toEqual([what, isKnown])
    })
    // After a power cut the index may be gone. A broken frame with whole commits behind it is damage all the same, and an
    // end that is cut off in the last commit is what a cut leaves of one that nobody was told of.
    const [file, whole] = [victim.killed.get('') ?? Buffer.alloc(0), victim.killed.get('-wal') ?? Buffer.alloc(0)]
    const broken = Buffer.from(whole)
    broken.writeUInt8((broken[5_000] ?? 0) ^ 1, 5_000)
    const withLog = (bytes: Buffer) =>
      new Map([
        ['', file],
        ['-wal', bytes],
      ])
    expect(troubleOf(withLog(broken), 'broken')).toContain('damaged at frame 2')
    expect(troubleOf(withLog(whole.subarray(0, whole.length - 100)), 'torn')).toBeNull()
  })
})
