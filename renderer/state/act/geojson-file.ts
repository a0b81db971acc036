/** Bringing in a GeoJSON file: read in the page, added as one edit, and told what was left out. */
import { type DrawnNote, readDrawnGeojson } from '#core/exchange/drawn-geojson.ts'
import type { DrawnSort } from '#core/record/drawn-ground.ts'
import { fitPlaces } from '#renderer/state/session/map-window.ts'
import { metres } from '#renderer/text/figure.ts'
import { stopDrawing } from '#renderer/state/session/drawn-ground.ts'
import { undoOffer } from '#renderer/state/library/history.ts'
import { savedSpot } from '#renderer/state/library/library.ts'
import { tell } from '#renderer/state/library/notices.ts'
import { settings } from '#renderer/state/library/settings.ts'
import { stoppingWords as say } from '#renderer/words/en-stopping.ts'
import { addDrawn, roomFor } from './drawn-acts.ts'

/** Bytes. */
const LARGEST = 5_000_000

function noteText(note: DrawnNote): string {
  const { units } = settings.peek()
  if (note.what === 'thinned') return say.notes.thinned(note.count, metres(note.metres, units))
  if (note.what === 'far') return say.notes.far(metres(note.metres, units))
  return say.notes[note.what](note.count)
}

export async function bringInFile(sort: DrawnSort, file: File): Promise<void> {
  stopDrawing()
  if (file.size > LARGEST) return tell('fault', say.tooLarge(file.name))
  let text: string
  try {
    text = await file.text()
  } catch {
    return tell('fault', say.unreadable(file.name))
  }
  const read = readDrawnGeojson(text, savedSpot.peek()?.stop.at ?? null, roomFor(sort))
  if (!read.ok) return tell('fault', say.fileFault(file.name, read.fault.message))
  const { pieces, notes } = read.value
  if (!addDrawn(sort, pieces)) return
  fitPlaces(pieces.flatMap(({ shape }) => shape.points))
  const sentences = [say.readFile(file.name, pieces.length), ...notes.map(noteText)]
  tell('done', sentences.join(' '), undoOffer())
}
