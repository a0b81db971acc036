/** The worker that reads a GeoJSON file: one text, one answer, and it is ended after that. */
import { readDrawnGeojson } from '#core/exchange/drawn-geojson.ts'
import type { GeojsonRequest } from './geojson-reading.ts'

addEventListener('message', ({ data }: MessageEvent<GeojsonRequest>) => {
  postMessage(readDrawnGeojson(data.text, data.near, data.most))
})
