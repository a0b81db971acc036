/** Where the program keeps its things: the same folder for both hosts, or the one the user names. */
import { isAbsolute, join, resolve } from 'node:path'

export const DATA_VARIABLE = 'STANDPOINT_DATA'
const FOLDER_NAME = 'Standpoint'

type Environment = Readonly<Record<string, string | undefined>>

/** The data folder: the environment's, else the operating system's usual place for a program's data. */
export function dataFolder(environment: Environment, platform: string, home: string): string {
  const named = environment[DATA_VARIABLE]
  if (named !== undefined && named.trim() !== '') return resolve(named)
  if (platform === 'darwin') return join(home, 'Library', 'Application Support', FOLDER_NAME)
  if (platform === 'win32') return join(environment['APPDATA'] ?? join(home, 'AppData', 'Roaming'), FOLDER_NAME)
  const config = environment['XDG_CONFIG_HOME']
  // The XDG base directory specification: a relative path is to be ignored.
  return join(config !== undefined && isAbsolute(config) ? config : join(home, '.config'), FOLDER_NAME)
}
