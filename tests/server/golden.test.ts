import { readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { assertAccounted } from '../../shared-core/day/account.ts'
import { applyEntry, emptyState } from '../../shared-core/day/apply.ts'
import type { Entry, EventType } from '../../shared-core/day/events.ts'
import { hashState } from '../../shared-core/day/hash.ts'
import { FOLD_VERSION } from '../../shared-core/day/state.ts'
import { upcastEntry } from '../../shared-core/day/upcast.ts'

const FOLDER = fileURLToPath(new URL('./golden/', import.meta.url))
const FILES = readdirSync(FOLDER).filter((name) => name.endsWith('.jsonl'))

interface Head {
  readonly foldVersion: number
  readonly entries: number
  readonly hash: string
}

function readGolden(name: string): { head: Head; entries: Entry[] } {
  const [head = '', ...lines] = readFileSync(FOLDER + name, 'utf8')
    .trim()
    .split('\n')
  return { head: JSON.parse(head), entries: lines.map((line) => upcastEntry(JSON.parse(line))) }
}

describe('journals that earlier releases wrote', () => {
  it('[P1] given this fold, when looked for, then it has a golden journal', () => {
    expect(FILES).toContain(`fold-${FOLD_VERSION}.jsonl`)
  })

  it.each(FILES)(
    '[P1] given %s, when folded, then every entry fits; in its own fold the hash is the one of then',
    (name) => {
      const { head, entries } = readGolden(name)
      expect(entries).toHaveLength(head.entries)
      const state = emptyState()
      for (const entry of entries) applyEntry(state, entry)
      assertAccounted(state)
      if (head.foldVersion === FOLD_VERSION) expect(hashState(state)).toBe(head.hash)
    },
  )

  it('[P1] given the newest one, when looked through, then every kind of event is in it', () => {
    const { entries } = readGolden(`fold-${FOLD_VERSION}.jsonl`)
    const seen = new Set<string>(entries.flatMap(({ events }) => events.map(({ type }) => type)))
    expect(Object.keys(KINDS).filter((kind) => !seen.has(kind))).toEqual([])
  })
})

/** A kind that is missing here does not compile. */
const KINDS: { readonly [Type in EventType]: true } = {
  dayOpened: true,
  dayClosed: true,
  setUpChanged: true,
  loadListSet: true,
  loadsForbidden: true,
  plannedDone: true,
  piecesShaped: true,
  piecesCarriedIn: true,
  piecesFound: true,
  batchMoved: true,
  loaded: true,
  loadChanged: true,
  flipped: true,
  out: true,
  loadMoved: true,
  loadUndone: true,
  batchWasted: true,
  unsureRaised: true,
  unsureSettled: true,
  stockTaken: true,
  counted: true,
  kept: true,
  released: true,
  handedOver: true,
  takenBack: true,
  orderTaken: true,
  orderChanged: true,
  orderEnded: true,
  orderShort: true,
  standingSet: true,
  standingEnded: true,
  itemsMoved: true,
  portionsLeft: true,
  dayReopened: true,
  setUpPlanned: true,
  setUpDropped: true,
  marked: true,
  unmarked: true,
  noted: true,
  noteCleared: true,
  cared: true,
  saleNoted: true,
  importNoted: true,
  dayOldPut: true,
  dayOldTaken: true,
  wantedSet: true,
  mixesPlanned: true,
  mixesOrdered: true,
  mixDropped: true,
  lineWeighed: true,
  mixRead: true,
  mixMoved: true,
  mixFolded: true,
  mixEnded: true,
  batchPlaced: true,
  placeRead: true,
  paceTaught: true,
  onHandSet: true,
  preparationMade: true,
  buildDropped: true,
  piecesWeighed: true,
}
