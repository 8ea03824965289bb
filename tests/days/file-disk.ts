import { copyFileSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { giveNewCourse } from '../../server/journal/give-new-course.ts'
import type { Journal } from '../../server/journal/journal.ts'
import type { Sqlite } from '../../server/journal/sqlite.ts'
import { SqliteJournal } from '../../server/journal/sqlite-journal.ts'
import type { Answer } from '../../shared-core/day/answers.ts'
import type { Entry } from '../../shared-core/day/events.ts'
import type { CommandId } from '../../shared-core/ids.ts'
import type { Copy, Disk } from './disk.ts'

interface FileCopy extends Copy {
  readonly file: string
}

/** A real journal in a folder of its own: real commits, real copies, and a process ends with its handle being dropped. */
export class FileDisk implements Disk {
  readonly #sqlite: Sqlite
  readonly #folder = mkdtempSync(join(tmpdir(), 'boilboard-day-'))
  readonly #file = join(this.#folder, 'shop.sqlite')
  #copies = 0
  /** The process's, while one runs; else one for looking at what is on disk. */
  #journal: SqliteJournal

  constructor(sqlite: Sqlite) {
    this.#sqlite = sqlite
    this.#journal = this.#opened()
  }

  get course(): string {
    return this.#journal.course
  }

  takeNews(): boolean {
    return true
  }

  entriesAfter(seq: number): Iterable<Entry> {
    return this.#journal.lastSeq() === seq ? [] : this.#journal.entriesAfter(seq)
  }

  answerOf(id: CommandId): Answer | null {
    return this.#journal.answerOf(id)
  }

  async open(): Promise<{ readonly journal: Journal; drop(): void }> {
    return { journal: this.#reopened(), drop: () => this.#reopened() }
  }

  async copy(): Promise<FileCopy> {
    this.#copies += 1
    const file = join(this.#folder, `copy-${this.#copies}.sqlite`)
    await this.#journal.backupTo(file)
    return { file, seq: this.#journal.lastSeq() }
  }

  /** On a course of its own making. */
  putBack(copy: Copy): void {
    if (!isFileCopy(copy)) throw new Error('a copy of another disk')
    this.#journal.close()
    for (const end of ['', '-wal', '-shm']) rmSync(`${this.#file}${end}`, { force: true })
    copyFileSync(copy.file, this.#file)
    giveNewCourse(this.#sqlite, this.#file)
    this.#journal = this.#opened()
  }

  loseLast(): void {
    throw new Error(SIMULATED_ONLY)
  }

  forget(): void {
    throw new Error(SIMULATED_ONLY)
  }

  end(): void {
    this.#journal.close()
    rmSync(this.#folder, { recursive: true, force: true })
  }

  #reopened(): SqliteJournal {
    this.#journal.close()
    this.#journal = this.#opened()
    return this.#journal
  }

  #opened(): SqliteJournal {
    return new SqliteJournal(this.#sqlite, this.#file, 'shop')
  }
}

const SIMULATED_ONLY = 'this bug is planted on the simulated disk only'

function isFileCopy(copy: Copy): copy is FileCopy {
  return 'file' in copy
}
