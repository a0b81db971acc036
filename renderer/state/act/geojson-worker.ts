/** The worker that reads a GeoJSON file: one text, one answer, and it is ended after that. */
import { readDrawnGeojson } from '#core/exchange/drawn-geojson.ts'
import type { GeojsonAsk } from './geojson-reading.ts'

addEventListener('message', ({ data }: MessageEvent<GeojsonAsk>) => {
  postMessage(readDrawnGeojson(data.text, data.near, data.most))
})
