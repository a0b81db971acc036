/** Bringing in a GeoJSON file: read beside the page, added as one edit, and told what was left out. */
import { type ReadonlySignal, signal } from '@preact/signals'
import type { DrawnNote } from '#core/exchange/drawn-geojson.ts'
import type { DrawnSort } from '#core/record/drawn-ground.ts'
import { fitPlaces } from '#renderer/state/session/map-window.ts'
import { metres } from '#renderer/text/figure.ts'
import { stopDrawing } from '#renderer/state/session/drawn-ground.ts'
import { undoOffer } from '#renderer/state/library/history.ts'
import { savedSpot, shoot } from '#renderer/state/library/library.ts'
import { tell } from '#renderer/state/library/notices.ts'
import { settings } from '#renderer/state/library/settings.ts'
import { stoppingWords as say } from '#renderer/words/en-stopping.ts'
import { addDrawn, roomFor } from './drawn-acts.ts'
import { LONGEST, readBeside } from './geojson-reading.ts'

/** Bytes. */
const LARGEST = 5_000_000

function noteText(note: DrawnNote): string {
  const { units } = settings.peek()
  if (note.what === 'simplified') return say.notes.simplified(note.count, metres(note.metres, units))
  if (note.what === 'far') return say.notes.far(metres(note.metres, units))
  return say.notes[note.what](note.count)
}

interface ReadingFile {
  readonly name: string
  readonly sort: DrawnSort
  readonly stop: () => void
}

const readingFileSignal = signal<ReadingFile | null>(null)
/** The file that is being read, with the way to stop it; null when none is. */
export const readingFile: ReadonlySignal<ReadingFile | null> = readingFileSignal

export async function bringInFile(sort: DrawnSort, file: File): Promise<void> {
  stopDrawing()
  if (file.size > LARGEST) return tell('fault', say.tooLarge(file.name))
  const into = shoot.peek()?.id
  let text: string
  try {
    text = await file.text()
  } catch {
    return tell('fault', say.unreadable(file.name))
  }
  // One at a time: the file chosen last is the one that is wanted.
  readingFile.peek()?.stop()
  const reading = readBeside({ text, near: savedSpot.peek()?.stop.at ?? null, most: roomFor(sort) })
  const { stop } = reading
  readingFileSignal.value = { name: file.name, sort, stop }
  const read = await reading.outcome
  if (readingFile.peek()?.stop === stop) readingFileSignal.value = null
  if (read === 'stopped') return tell('done', say.stoppedReading(file.name))
  if (read === 'too-long') return tell('fault', say.tookTooLong(file.name, LONGEST))
  if (read === 'lost') return tell('fault', say.readingFailed(file.name))
  if (!read.ok) return tell('fault', say.fileFault(file.name, read.fault.message))
  // It was meant for the shoot that was open when it was chosen.
  if (shoot.peek()?.id !== into) return tell('fault', say.otherShoot(file.name))
  const { pieces, notes } = read.value
  if (!addDrawn(sort, pieces)) return
  fitPlaces(pieces.flatMap(({ shape }) => shape.points))
  const sentences = [say.readFile(file.name, pieces.length), ...notes.map(noteText)]
  tell('done', sentences.join(' '), undoOffer())
}
