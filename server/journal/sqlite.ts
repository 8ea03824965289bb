import type { DatabaseSyncInstance } from '@photostructure/sqlite'

/** What we use of `node:sqlite`; the package for Node 20 has the same classes. */
export interface Sqlite {
  readonly DatabaseSync: new (file: string, options?: { readonly readOnly?: boolean }) => DatabaseSyncInstance
  readonly backup: (source: DatabaseSyncInstance, file: string) => Promise<unknown>
}

/**
 * The seam: SQLite as built into Node (22.13 on), else the package whose binaries lie in its own folder, so that nothing
 * is compiled or downloaded at install. Rejected: better-sqlite3, which compiles for over a minute at every install.
 */
export async function loadSqlite(): Promise<Sqlite> {
  const builtIn = process.getBuiltinModule?.('node:sqlite') as (Partial<Sqlite> & Statements) | undefined
  // Node 22 has the module before it has all that we use of it.
  const hasAll = builtIn?.backup !== undefined && builtIn.StatementSync?.prototype.setReturnArrays !== undefined
  if (hasAll && builtIn.DatabaseSync !== undefined) return builtIn as Sqlite
  return (await import('@photostructure/sqlite')) as unknown as Sqlite
}

interface Statements {
  readonly StatementSync?: { readonly prototype: { readonly setReturnArrays?: unknown } }
}
