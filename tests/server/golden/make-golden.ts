import { writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { applyEntry, emptyState } from '../../../shared-core/day/apply.ts'
import { hashState } from '../../../shared-core/day/hash.ts'
import { FOLD_VERSION } from '../../../shared-core/day/state.ts'
import { goldenEntries } from './golden-entries.ts'

/**
 * Writes the golden journal of this fold: `npx tsx tests/server/golden/make-golden.ts`. To be run once for a release and
 * never again: later releases must fold what this one wrote to the hash that this one had. A fold that changes gets a
 * new version and a new file beside the old one.
 */
const FILE = fileURLToPath(new URL(`./fold-${FOLD_VERSION}.jsonl`, import.meta.url))
const entries = goldenEntries(600, 20_261_126)
const state = emptyState()
for (const entry of entries) applyEntry(state, entry)
const head = { foldVersion: FOLD_VERSION, entries: entries.length, hash: hashState(state) }
writeFileSync(FILE, `${[head, ...entries].map((line) => JSON.stringify(line)).join('\n')}\n`)
