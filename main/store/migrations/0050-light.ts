/** Light: what shoots, cameras and spots of before lack. A spot is planned for the moment of the change; anything unreadable is left as it is. */
import type { Migration } from '#main/store/migration.ts'

export const light: Migration = {
  form: 50,
  script: `
    UPDATE shoot SET document = json_insert(document,
      '$.zone', NULL,
      '$.light', json('{"subject":null,"landmark":null,"altitude":null,"sun":null,"soft":null,"moonUp":false,"hours":null}'),
      '$.sky', 'clear',
      '$.iso', 100,
      '$.bag.camera.fastestShutter', 0.00025,
      '$.bag.camera.slowestShutter', 30)
      WHERE json_valid(document);
    UPDATE spot SET document = json_insert(document, '$.when', CAST(strftime('%s', 'now') AS INTEGER) * 1000)
      WHERE json_valid(document);
  `,
}
