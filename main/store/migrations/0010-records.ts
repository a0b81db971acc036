/** Shoots and spots: each a JSON document beside the columns that are asked for; counters. */
import type { Migration } from '#main/store/migration.ts'

export const records: Migration = {
  form: 10,
  script: `
    CREATE TABLE counter (name TEXT PRIMARY KEY, value INTEGER NOT NULL) STRICT, WITHOUT ROWID;
    INSERT INTO counter (name, value) VALUES ('version', 0);

    CREATE TABLE shoot (
      key INTEGER PRIMARY KEY,
      id TEXT NOT NULL UNIQUE CHECK (id <> ''),
      revision INTEGER NOT NULL CHECK (revision >= 1),
      name TEXT NOT NULL,
      made_at INTEGER NOT NULL,
      document TEXT NOT NULL
    ) STRICT;

    -- Deferred, so that one batch may bring back spots and their shoot in any order.
    CREATE TABLE spot (
      key INTEGER PRIMARY KEY,
      id TEXT NOT NULL UNIQUE CHECK (id <> ''),
      shoot_id TEXT NOT NULL REFERENCES shoot (id) ON DELETE CASCADE DEFERRABLE INITIALLY DEFERRED,
      revision INTEGER NOT NULL CHECK (revision >= 1),
      rank REAL NOT NULL,
      name TEXT NOT NULL,
      status TEXT NOT NULL,
      stars INTEGER NOT NULL CHECK (stars BETWEEN 0 AND 5),
      lat REAL NOT NULL CHECK (lat BETWEEN -90 AND 90),
      lon REAL NOT NULL CHECK (lon >= -180 AND lon < 180),
      document TEXT NOT NULL
    ) STRICT;
    CREATE INDEX spot_by_shoot ON spot (shoot_id, rank);
  `,
}
