/** The scan: shoots of before have no stopping ground, no keep-outs, and the usual wishes of the picture. */
import type { Migration } from '#main/store/migration.ts'

export const scan: Migration = {
  form: 70,
  script: `
    UPDATE shoot SET document = json_insert(document,
      '$.stoppingGround', json('[]'),
      '$.keepOuts', json('[]'),
      '$.scanWishes', json('{"subjectFill":{"must":true,"weight":3,"axis":"width","least":0.3,"most":0.6},"landmarkFill":{"must":false,"weight":3,"axis":"height","least":0.2,"most":0.6},"landmarkWhole":{"must":true,"weight":3,"crops":false},"landmarkPlace":null,"subjectView":null,"landmarkShown":{"must":true,"weight":3,"least":0.8},"softness":null,"light":{"must":false,"weight":3},"parking":null,"lensHeight":{"least":0.8,"most":1.6},"days":null,"hours":null}'))
      WHERE json_valid(document);
  `,
}
