/** Screens: shoots of before have none. */
import type { Migration } from '#main/store/migration.ts'

export const screens: Migration = {
  form: 60,
  script: `
    UPDATE shoot SET document = json_insert(document, '$.screens', json('[]')) WHERE json_valid(document);
  `,
}
