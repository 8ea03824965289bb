/**
 * The journal file's form, step by step. A step is never changed once released; the file's `user_version` says how many
 * it has taken.
 */
export const MIGRATIONS: readonly string[] = [
  `CREATE TABLE about (key TEXT PRIMARY KEY, value TEXT NOT NULL) STRICT, WITHOUT ROWID;
   CREATE TABLE entries (
     seq INTEGER PRIMARY KEY,
     command_id TEXT NOT NULL UNIQUE,
     entry TEXT NOT NULL
   ) STRICT;
   CREATE TABLE refusals (
     command_id TEXT PRIMARY KEY,
     recorded_at_ms INTEGER NOT NULL,
     answer TEXT NOT NULL
   ) STRICT, WITHOUT ROWID;
   CREATE INDEX refusals_by_time ON refusals (recorded_at_ms);
   CREATE TABLE snapshots (
     seq INTEGER PRIMARY KEY,
     fold_version INTEGER NOT NULL,
     hash TEXT NOT NULL,
     state TEXT NOT NULL
   ) STRICT;`,
  // Of a year's million rows a few hundred: the text is `SET_UP_MARK` of journal.ts, and the query says the same.
  `CREATE INDEX IF NOT EXISTS entries_of_set_up ON entries (seq) WHERE instr(entry, '"type":"setUp') > 0;`,
  // `sum`: see running-sum.ts; rows from before have none. What the index over entries of the set-up and the table of
  // refusals must come to is kept in `about`, as no running sum goes over them. Archives: see archives.ts.
  `ALTER TABLE entries ADD COLUMN sum INTEGER;
   ALTER TABLE refusals ADD COLUMN sum INTEGER;
   CREATE TABLE archives (
     first_seq INTEGER PRIMARY KEY,
     last_seq INTEGER NOT NULL,
     last_sum INTEGER,
     name TEXT NOT NULL UNIQUE
   ) STRICT;
   INSERT INTO about (key, value) VALUES ('refusals', '0');
   INSERT INTO about (key, value)
     SELECT 'set_ups', count(*) FROM entries WHERE instr(entry, '"type":"setUp') > 0;`,
]
