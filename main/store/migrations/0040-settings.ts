/** Settings: one row per field, as JSON, so that two windows change different fields without undoing each other. */
import type { Migration } from '#main/store/migration.ts'

export const settings: Migration = {
  form: 40,
  script: `
    CREATE TABLE setting (name TEXT PRIMARY KEY, value TEXT NOT NULL) STRICT, WITHOUT ROWID;
  `,
}
