import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { loadSqlite } from '../../server/journal/sqlite.ts'
import { Chance } from '../days/chance.ts'
import { DAMAGE_KINDS, drawDamage } from './damage.ts'
import type { Verdict } from './verdict.ts'
import { judge, verifies } from './verdict.ts'
import { makeVictim } from './victim.ts'

export interface Judged {
  readonly what: string
  readonly verdict: Verdict
}

/**
 * So many damaged journals, each kind in turn, and what became of each.
 * @param verifyEvery so many of them are put to the whole check too, which takes its time
 */
export async function judgeDamages(count: number, seed: number, verifyEvery: number): Promise<readonly Judged[]> {
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
      if (at % verifyEvery !== 0) continue
      const whole = await verifies(sqlite, join(folder, 'damaged'), damage, victim.known)
      judged.push({ what: `${damage.what}, verified`, verdict: whole })
    }
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
  return judged
}

/** Those that must not be: nobody is told, or not in words. */
export function badOnes(judged: readonly Judged[]): readonly Judged[] {
  return judged.filter(({ verdict }) => verdict.kind === 'silent' || verdict.kind === 'not in words')
}

/** Tells what became of all of them. @returns whether none is bad */
export function sayDamages(judged: readonly Judged[], say: (line: string) => void): boolean {
  const counts = new Map<string, number>()
  for (const { verdict } of judged) counts.set(verdict.kind, (counts.get(verdict.kind) ?? 0) + 1)
  say(
    `${judged.length} looks at damaged journals: ${[...counts].map(([kind, times]) => `${times} ${kind}`).join(', ')}`,
  )
  const bad = badOnes(judged)
  for (const { what, verdict } of bad) say(`${what}: ${JSON.stringify(verdict)}`)
  return bad.length === 0
}
