/** Where the subject stops, for boxes on the map: an R*Tree, with the exact position beside its rounded bounds. */
import type { Migration } from '#main/store/migration.ts'

export const places: Migration = {
  form: 20,
  // The tree keeps 32-bit floats rounded outward: up to 2 m too wide. The added columns let a query ask exactly.
  script: `
    CREATE VIRTUAL TABLE spot_place USING rtree (key, west, east, south, north, +lat, +lon);
    INSERT INTO spot_place (key, west, east, south, north, lat, lon)
      SELECT key, lon, lon, lat, lat, lat, lon FROM spot;
  `,
}
