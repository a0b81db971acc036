/** Where the program keeps its things: the same folder for both hosts, or the one the user names; whether it can be used. */
import { accessSync, constants, lstatSync, mkdirSync, readdirSync, statSync } from 'node:fs'
import { dirname, isAbsolute, join, resolve } from 'node:path'
import { done, failed, type Result } from '#core/result.ts'
import { isDiskFull } from './disk-full.ts'

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

/**
 * Makes the data folder, for its owner alone, or looks whether it can be used: a start that cannot go on says what stands
 * in its way. One that exists keeps its mode, since the user may have named any; what the program makes in it is closed.
 */
export function prepareDataFolder(folder: string): Result<null, 'data-folder'> {
  const obstacle = obstacleAt(folder)
  return obstacle === null ? done(null) : failed('data-folder', `${obstacle} ${WHAT_TO_DO}`)
}

const WHAT_TO_DO = `Fix that, or name another folder in the environment variable ${DATA_VARIABLE}.`

/** What keeps a folder from being used, as a sentence; null when nothing does. */
function obstacleAt(folder: string): string | null {
  try {
    const entry = lstatSync(folder, { throwIfNoEntry: false })
    if (entry === undefined) {
      mkdirSync(folder, { recursive: true, mode: 0o700 })
      return null
    }
    if (entry.isSymbolicLink() && statSync(folder, { throwIfNoEntry: false }) === undefined)
      return `Standpoint's folder ${folder} is a link that leads nowhere.`
    if (!statSync(folder).isDirectory()) return `Standpoint's folder ${folder} is not a folder but a file.`
    accessSync(folder, constants.R_OK | constants.X_OK)
    readdirSync(folder)
    return null
  } catch (error) {
    return `Standpoint's folder ${folder} cannot be used: ${whyOf(error, folder)}.`
  }
}

function whyOf(error: unknown, folder: string): string {
  if (isDiskFull(error)) return 'its disk is full'
  const code = error instanceof Error && 'code' in error ? String(error.code) : ''
  switch (code) {
    case 'EACCES':
    case 'EPERM':
      return 'it may not be read or made by this user'
    case 'EROFS':
      return 'its disk may only be read'
    case 'ENOTDIR':
    case 'EEXIST':
      return `something on the way to it, in ${dirname(folder)}, is not a folder`
    case 'ENOENT':
      return `a link on the way to it, in ${dirname(folder)}, leads nowhere`
    case 'ELOOP':
      return 'it is a link that leads round in a circle'
    case 'ENAMETOOLONG':
      return 'its name is too long'
    case 'EIO':
      return 'its disk does not answer as it should'
    default:
      return code === '' ? String(error) : `the system says ${code}`
  }
}
