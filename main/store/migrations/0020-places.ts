/** Where the subject stops, for boxes on the map: an R*Tree, and the exact position by key in few pages. */
import type { Migration } from '#main/store/migration.ts'

export const places: Migration = {
  form: 20,
  // The tree keeps 32-bit floats rounded outward, up to 2 m too wide; the index tells what its edges leave open. (Columns
  // added to the tree itself would be read ten times slower.)
  script: `
    CREATE VIRTUAL TABLE spot_place USING rtree (key, west, east, south, north);
    INSERT INTO spot_place (key, west, east, south, north) SELECT key, lon, lon, lat, lat FROM spot;
    CREATE INDEX spot_at ON spot (key, lat, lon);
  `,
}
