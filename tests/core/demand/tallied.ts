import { applyEntry } from '../../../shared-core/day/apply.ts'
import { forkState } from '../../../shared-core/day/state-json.ts'
import type { JournalDay, JournalItem } from '../../../shared-core/demand/journal-day.ts'
import { JournalTally } from '../../../shared-core/demand/journal-tally.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import { at, batch, lines, stateWith } from '../support/make.ts'
import type { Recording } from '../support/record.ts'
import { record } from '../support/record.ts'
import { shopWith } from '../support/shop.ts'

/** A recorded day followed entry by entry, as the server's history does. */
export function tallied(day: Pick<Recording, 'start' | 'entries'>) {
  const state = forkState(day.start)
  const tally = new JournalTally(at('12:00'))
  for (const entry of day.entries) {
    tally.before(state, entry)
    applyEntry(state, entry)
    tally.after(state, entry)
  }
  return { state, tally }
}

/** The day as it stands at an instant; a closed one as it was at its close. */
export function dayOf(day: Pick<Recording, 'start' | 'entries'>, now: EpochMs = at('14:00')): JournalDay {
  const { state, tally } = tallied(day)
  return tally.day(state, now)
}

export function itemOf(day: JournalDay, id: string): JournalItem {
  const found = day.items.find((item) => item.id === id)
  if (found === undefined) throw new Error(`the day has no ${id}`)
  return found
}

/** An open day of the test shop, 6:00 to 15:00: 24 sesame and 12 poppy, for sale from 5:41. */
export function openDay(shop: Shop = shopWith()): Recording {
  const day = record(stateWith({ shop, day: null, batches: [batch({ id: 'dough', pieces: 120, since: at('4:00') })] }))
  day.at('5:00', { type: 'openDay' })
  day.bake('5:10', '5:26', lines('sesame', 24, 'poppy', 12))
  return day
}
