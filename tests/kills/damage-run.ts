import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { loadSqlite } from '../../server/journal/sqlite.ts'
import { Chance } from '../days/chance.ts'
import { DAMAGE_KINDS, drawDamage } from './damage.ts'
import type { Verdict } from './verdict.ts'
import { judge } from './verdict.ts'
import { makeVictim } from './victim.ts'

export interface Judged {
  readonly what: string
  readonly verdict: Verdict
}

/** So many damaged journals, each kind in turn, and what became of each. */
export async function judgeDamages(count: number, seed: number): Promise<readonly Judged[]> {
  const folder = mkdtempSync(join(tmpdir(), 'boilboard-damage-'))
  const sqlite = await loadSqlite()
  const chance = new Chance(seed)
  const judged: Judged[] = []
  try {
    const victim = await makeVictim(sqlite, join(folder, 'good'))
    for (let at = 0; at < count; at += 1) {
      const damage = drawDamage(victim, at % DAMAGE_KINDS, chance)
      const verdict = await judge(sqlite, join(folder, 'damaged'), damage, victim.known)
      judged.push({ what: damage.what, verdict })
    }
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
  return judged
}
