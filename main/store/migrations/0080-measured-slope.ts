/** Measured slope and aspect: under no pin and no landmark of before were they measured. */
import type { Migration } from '#main/store/migration.ts'

export const measuredSlope: Migration = {
  form: 80,
  script: `
    UPDATE spot SET document = json_insert(document,
      '$.stop.slope', NULL, '$.stop.aspect', NULL,
      '$.standpoint.slope', NULL, '$.standpoint.aspect', NULL)
      WHERE json_valid(document);
    UPDATE shoot SET document = json_set(document, '$.landmarks', json((
      SELECT json_group_array(json(json_insert(value, '$.baseSlope', NULL, '$.baseAspect', NULL)))
        FROM (SELECT value FROM json_each(shoot.document, '$.landmarks') WHERE type = 'object' ORDER BY key))))
      WHERE json_valid(document) AND json_type(document, '$.landmarks') = 'array';
  `,
}
