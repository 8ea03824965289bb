import { isZone } from '../../../server/live/shop-clock.ts'
import { applyEntry, emptyState } from '../../../shared-core/day/apply.ts'
import { decide } from '../../../shared-core/day/decide.ts'
import { hashState } from '../../../shared-core/day/hash.ts'
import { commandId, deviceId, formulaId } from '../../../shared-core/ids.ts'
import { parseFormulaFile, toFormulaFile } from '../../../shared-core/shop/formula-file.ts'
import { setUpChanges } from '../../../shared-core/shop/set-up-diff.ts'
import { toSetUpFile } from '../../../shared-core/shop/set-up-export.ts'
import { parseSetUpFile } from '../../../shared-core/shop/set-up-file.ts'
import { changesTold } from '../../../shared-core/shop/set-up-told.ts'
import { startingPoint } from '../../../shared-core/shop/starting-points.ts'
import { doughRoomFile } from '../../core/shop/formula-file.ts'
import { shopOf } from '../../core/shop/set-up-file-maker.ts'
import { at } from '../../core/support/make.ts'
import { shopWith } from '../../core/support/shop.ts'
import { kitchenParts } from '../../core/support/shop-kitchen.ts'
import type { Target } from '../fuzz.ts'
import { assertProblems, Find } from '../fuzz.ts'
import { mutated, overWire } from '../mutate.ts'
import type { ShopAtWork } from '../shop-at-work.ts'

const DOUGH_ROOM = shopOf(doughRoomFile())
const NEW = { name: 'New shop', zone: 'America/Chicago', language: 'en' } as const

/** Set-up files as they are exported, with something wrong in them. */
export function setUpTargets(shop: ShopAtWork): readonly Target[] {
  const running = shop.state.shop
  if (running === null) throw new Error('the shop at work is set up')
  const files = [shopWith(kitchenParts()), running, startingPoint('shelves', NEW), DOUGH_ROOM].map((one) =>
    overWire(toSetUpFile(one)),
  )
  return [
    {
      name: 'set-up file',
      // Some 200 times as slow as a command.
      weight: 0.04,
      inputs: mutated(files),
      check: (raw) => {
        const parsed = parseSetUpFile(raw, { isZone })
        if (!parsed.ok) {
          assertProblems(parsed.problems, raw)
          return 'refused'
        }
        // What can be read can be written again, and read again the same.
        const again = parseSetUpFile(overWire(toSetUpFile(parsed.shop)), { isZone })
        if (!again.ok) throw new Find(`exported, it is refused: ${JSON.stringify(again.problems[0])}`)
        if (setUpChanges(parsed.shop, again.shop).length > 0) throw new Find('exported, it is another')
        takenAnew(parsed.shop)
        changesTold(running, setUpChanges(running, parsed.shop))
        return 'read'
      },
    },
    {
      name: 'formula file',
      weight: 0.04,
      inputs: mutated([overWire(toFormulaFile(DOUGH_ROOM, formulaId('plain')))]),
      check: (raw) => {
        const parsed = parseFormulaFile(raw, running)
        if (!parsed.ok) {
          assertProblems(parsed.problems, raw)
          return 'refused'
        }
        takenAnew(parsed.shop)
        return 'read'
      },
    },
  ]
}

/** A file that is read makes a shop: from nothing it is taken, and what it comes to is plain JSON. */
function takenAnew(shop: ReturnType<typeof shopWith>): void {
  const state = emptyState()
  const head = { id: commandId('setup00001'), deviceSeq: 1, tappedAtMs: null }
  const nowMs = at('4:00')
  const context = { nowMs, deviceId: deviceId('fuzz'), localDate: '2026-11-24', noonOf: () => at('12:00') }
  const decision = decide(state, { ...head, type: 'changeSetUp', changes: setUpChanges(null, shop) }, context)
  if (decision.kind !== 'taken') throw new Find(`a readable file is not taken: ${JSON.stringify(decision)}`)
  const { told, events } = decision
  const entry = { seq: 1, commandId: head.id, deviceId: context.deviceId, recordedAtMs: nowMs, told, events }
  applyEntry(state, entry)
  const copy = emptyState()
  applyEntry(copy, JSON.parse(JSON.stringify(entry)))
  if (hashState(copy) !== hashState(state)) throw new Find('from the journal it is another shop')
}
