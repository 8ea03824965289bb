import { mkdirSync } from 'node:fs'
import { join } from 'node:path'
import { CopyKeeper } from '../../../server/copies/copy-keeper.ts'
import type { Refused } from '../../../server/journal/journal.ts'
import type { Sqlite } from '../../../server/journal/sqlite.ts'
import { loadSqlite } from '../../../server/journal/sqlite.ts'
import { SqliteJournal } from '../../../server/journal/sqlite-journal.ts'
import type { Verified } from '../../../server/journal/verify.ts'
import { verifyJournal } from '../../../server/journal/verify.ts'
import type { Entry } from '../../../shared-core/day/events.ts'
import { drawnMorning } from './made-entries.ts'
import { tempFolder } from './temp-folder.ts'

/** Entries of one morning, every kind of act among them. */
export const MORNING = drawnMorning(60, 7)

/** A shop's folder with a journal in it, and a folder for its copies; the clock stands until the test moves it. */
export class CopiedShop {
  readonly sqlite: Sqlite
  readonly folder: string
  readonly copies: string
  nowMs = Date.parse('2026-11-26T12:42:00Z')
  journal: SqliteJournal
  keeper: CopyKeeper

  private constructor(sqlite: Sqlite, folder: string) {
    this.sqlite = sqlite
    this.folder = join(folder, 'shop')
    this.copies = join(folder, 'copies')
    mkdirSync(this.folder)
    this.journal = this.openJournal()
    this.keeper = this.makeKeeper()
  }

  static async made(): Promise<CopiedShop> {
    return new CopiedShop(await loadSqlite(), tempFolder())
  }

  get file(): string {
    return join(this.folder, 'journal.sqlite')
  }

  inCopies(name: string): string {
    return join(this.copies, name)
  }

  openJournal(): SqliteJournal {
    this.journal = new SqliteJournal(this.sqlite, this.file, 'shop')
    return this.journal
  }

  makeKeeper(verify: (file: string) => Promise<Verified> = (file) => this.verify(file)): CopyKeeper {
    const { sqlite, file, copies } = this
    this.keeper = new CopyKeeper({ sqlite, journalFile: file, folder: copies, verify, nowMs: () => this.nowMs })
    return this.keeper
  }

  verify(file: string): Promise<Verified> {
    return verifyJournal(this.sqlite, file)
  }

  /** The entries of the morning after the journal's last, up to this seq. */
  async append(untilSeq: number, refusals: readonly Refused[] = []): Promise<readonly Entry[]> {
    const entries = MORNING.slice(this.journal.lastSeq(), untilSeq)
    await this.journal.append({ entries, refusals })
    return entries
  }

  /** As at the end of a server. */
  async stop(): Promise<void> {
    await this.keeper.close()
    this.journal.close()
  }
}
