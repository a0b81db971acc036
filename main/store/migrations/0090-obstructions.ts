/** Obstructions: what shoots of before called screens, moved whole and as it stands, damaged or not. */
import type { Migration } from '#main/store/migration.ts'

export const obstructions: Migration = {
  form: 90,
  script: `
    UPDATE shoot
      SET document = json_remove(
        json_insert(document, '$.obstructions', json_extract(document, '$.screens')), '$.screens')
      WHERE json_valid(document) AND json_type(document, '$.screens') IS NOT NULL;
  `,
}
