/** The settings as stored: one row a field; what is missing, unknown or unfit falls back to the default, field by field. */
import { DEFAULT_SETTINGS } from '#app/contract/default-settings.ts'
import { type Settings, settingsShape } from '#app/contract/settings.ts'
import type { ReadHandle, WriteHandle } from './handle.ts'

/** Named fields only; a field that is named but undefined is as good as not named. */
export type SettingsChange = { readonly [Field in keyof Settings]?: Settings[Field] | undefined }

export function readSettings(handle: ReadHandle): Settings {
  const stored: Record<string, unknown> = {}
  for (const { name, value } of handle.rows<{ name: string; value: string }>('SELECT name, value FROM setting')) {
    const fitting = fittingValue(name, value)
    if (fitting !== undefined) stored[name] = fitting
  }
  return { ...DEFAULT_SETTINGS, ...stored }
}

/** Stores the fields that are named and leaves the others. */
export function writeSettings(handle: WriteHandle, changes: SettingsChange): Settings {
  for (const [name, value] of Object.entries(changes)) {
    if (value === undefined) continue
    handle.run('INSERT OR REPLACE INTO setting (name, value) VALUES (?, ?)', name, JSON.stringify(value))
  }
  return readSettings(handle)
}

function fittingValue(name: string, value: string): unknown {
  if (!Object.hasOwn(settingsShape.shape, name)) return undefined
  try {
    const shape = settingsShape.shape[name as keyof Settings]
    const read = shape.safeParse(JSON.parse(value))
    return read.success ? read.data : undefined
  } catch {
    return undefined
  }
}
