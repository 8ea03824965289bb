import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { DateTime } from 'luxon'
import { afterEach, describe, expect, it } from 'vitest'
import { readManifest } from '../../server/copies/manifest.ts'
import { outdated } from '../../server/copies/retention.ts'
import { CopiedShop } from './support/copied-shop.ts'

const HOUR_MS = 3_600_000

/** Dates from one on, a day each; the shop's dates over months and both nights on which clocks are set. */
function datesFrom(first: string, count: number): string[] {
  const start = DateTime.fromISO(first, { zone: 'utc' })
  return Array.from({ length: count }, (_, n) => start.plus({ days: n }).toFormat('yyyy-MM-dd'))
}

const good = (dates: readonly string[]) => dates.map((date) => ({ date, isGood: true }))

/** What is left after each day's archive was made and what is outdated let go, day by day. */
function keptAfter(days: readonly { readonly date: string; readonly isGood: boolean }[]): string[] {
  let kept: { readonly date: string; readonly isGood: boolean }[] = []
  for (const day of days) {
    kept = [...kept, day]
    const out = outdated(kept)
    kept = kept.filter((one) => !out.includes(one))
  }
  return kept.map(({ date, isGood }) => (isGood ? date : `${date} bad`))
}

describe('what is kept of the daily archives', () => {
  it.each([
    ['of a week, all', datesFrom('2026-11-20', 7), datesFrom('2026-11-20', 7)],
    // 2026-11-01 is a Sunday: the last day of its ISO week, and the only one left of its month beside the newest.
    [
      'of a month, the days of the last week and the newest of each week and month',
      datesFrom('2026-11-01', 26),
      ['2026-11-01', '2026-11-08', '2026-11-15', ...datesFrom('2026-11-20', 7)],
    ],
    // The clocks are set on 2026-11-01 in America/Chicago (IANA): that week keeps its Sunday as every week.
    [
      'over the night on which clocks are set',
      datesFrom('2026-10-20', 20),
      ['2026-10-25', '2026-10-31', ...datesFrom('2026-11-01', 8).slice(0, 1), ...datesFrom('2026-11-02', 7)],
    ],
    [
      'of a shop that was shut for months, what it had',
      ['2026-01-31', '2026-02-01', '2026-11-26'],
      ['2026-01-31', '2026-02-01', '2026-11-26'],
    ],
  ])('[A16] given archives %s, when the outdated go, then the rest stays', (_what, made, kept) => {
    expect(keptAfter(good(made))).toEqual(kept)
  })

  it('[A16] given fifteen months of days, when the outdated go, then 7 days, 5 weeks and 12 months are left', () => {
    const kept = keptAfter(good(datesFrom('2025-09-01', 450)))
    // The last day is 2026-11-24, a Tuesday; the month ends are those of the calendar, February's too.
    expect(kept).toEqual([
      ...['2025-12-31', '2026-01-31', '2026-02-28', '2026-03-31', '2026-04-30', '2026-05-31', '2026-06-30'],
      ...['2026-07-31', '2026-08-31', '2026-09-30', '2026-10-31', '2026-11-01', '2026-11-08', '2026-11-15'],
      ...datesFrom('2026-11-18', 7),
    ])
  })

  // ISO 8601: the week with the year's first Thursday is its first, so that 2027-01-03 is still of week 2026-W53.
  it('[A16] given the turn of a year, when the outdated go, then its week is one week', () => {
    const kept = keptAfter(good(datesFrom('2026-12-14', 30)))
    expect(kept).toEqual(['2026-12-20', '2026-12-27', '2026-12-31', '2027-01-03', ...datesFrom('2027-01-06', 7)])
  })

  it('[A17] given bad archives, when the outdated go, then none pushes out a good one, and they go after the next good one', () => {
    const days = datesFrom('2026-11-01', 30).map((date, n) => ({ date, isGood: n < 3 }))
    expect(outdated(days)).toEqual([])
    const next = [...days, { date: '2026-12-01', isGood: true }]
    expect(outdated(next).map(({ date }) => date)).toEqual(datesFrom('2026-11-04', 27))
  })
})

let shop: CopiedShop
const opened: CopiedShop[] = []
afterEach(async () => {
  for (const one of opened.splice(0)) await one.stop()
})

const archives = () => readdirSync(shop.copies).filter((name) => /^\d{4}-/.test(name))
const listed = () => readManifest(shop.copies).map(({ file, isGood }) => (isGood ? file : `${file} bad`))

async function shopWithCopy(untilSeq: number): Promise<void> {
  shop = await CopiedShop.made()
  opened.push(shop)
  await shop.append(untilSeq)
  await shop.keeper.tick()
}

describe('the daily archive', () => {
  it('[A18] given a lull, when the day has none, then one is made, proved and listed with its fingerprint, once a day', async () => {
    await shopWithCopy(20)
    await shop.keeper.archive('2026-11-26')
    const verified = await shop.verify(shop.inCopies('2026-11-26.sqlite'))
    expect(verified).toMatchObject({ ok: true, seq: 20 })
    const [told] = shop.keeper.standing().archives
    expect(told).toMatchObject({ file: '2026-11-26.sqlite', seq: 20, hash: verified.ok ? verified.hash : '' })
    await shop.append(30)
    await shop.keeper.archive('2026-11-26')
    expect(shop.keeper.standing().archives.map(({ seq }) => seq)).toEqual([20])
    await shop.keeper.archive('2026-11-27')
    expect(shop.keeper.standing().archives.map(({ seq }) => seq)).toEqual([30, 20])
    // Another server finds them again.
    await shop.keeper.close()
    await shop.makeKeeper().tick()
    expect(shop.keeper.standing().archives.map(({ seq }) => seq)).toEqual([30, 20])
  })

  it('[A17] given a journal that does not verify, when its archive is made, then it is told and the good ones stay', async () => {
    await shopWithCopy(20)
    for (const day of datesFrom('2026-11-01', 9)) await shop.keeper.archive(day)
    const before = archives()
    await shop.keeper.close()
    let verified = 0
    const isBad = async () => {
      verified += 1
      return { ok: false, why: 'it is damaged.' } as const
    }
    await shop.makeKeeper(isBad).tick()
    await shop.keeper.archive('2026-11-10')
    expect(shop.keeper.standing().trouble).toContain("today's archive of the journal is not good: it is damaged")
    expect(archives()).toEqual(before)
    await shop.keeper.archive('2026-11-10')
    expect(verified, 'not at every lull: each try costs a fold of everything').toBe(1)
    shop.nowMs += 2 * HOUR_MS
    await shop.keeper.archive('2026-11-10')
    expect(verified).toBe(2)
  })

  it('[A19] given an archive that the drive has spoilt, when the others are made, then it is found and counts no more', async () => {
    await shopWithCopy(20)
    await shop.keeper.archive('2026-11-20')
    const file = shop.inCopies('2026-11-20.sqlite')
    const bytes = readFileSync(file)
    writeFileSync(file, bytes.fill(0x5a, 5_000, 5_010))
    shop.nowMs += 24 * HOUR_MS
    await shop.keeper.archive('2026-11-21')
    expect(shop.keeper.standing().archives.map((one) => one.file)).toEqual(['2026-11-21.sqlite'])
  })

  it('[A19] given a list that is gone, when the next archive is made, then those that are there are read and listed anew', async () => {
    await shopWithCopy(20)
    await shop.keeper.archive('2026-11-20')
    await shop.keeper.archive('2026-11-21')
    await shop.keeper.close()
    rmSync(shop.inCopies('archives.json'))
    await shop.makeKeeper().tick()
    await shop.keeper.archive('2026-11-22')
    expect(listed()).toEqual(['2026-11-20.sqlite', '2026-11-21.sqlite', '2026-11-22.sqlite'])
    expect(existsSync(shop.inCopies('2026-11-22.sqlite.part'))).toBe(false)
  })
})
