/** How far the shell has come with its start, told to `npm start` by a file: from outside nobody sees whether a window is there. */
import { readFileSync, writeFileSync } from 'node:fs'

/** `handed-over`: another Standpoint runs already and has come to the front. */
export type StartStage = 'window' | 'shown' | 'handed-over'

/** Names the file to the shell; not set when it is started in any other way. */
export const STAGE_VARIABLE = 'STANDPOINT_START_STAGE'

const STAGES: ReadonlySet<string> = new Set<StartStage>(['window', 'shown', 'handed-over'])

export function tellStage(stage: StartStage, environment: NodeJS.ProcessEnv = process.env): void {
  const file = environment[STAGE_VARIABLE]
  if (file === undefined || file === '') return
  try {
    writeFileSync(file, stage)
  } catch {
    // Whoever wanted to know is gone.
  }
}

/** Null while nothing was told yet. */
export function readStage(file: string): StartStage | null {
  try {
    const text = readFileSync(file, 'utf8')
    return STAGES.has(text) ? (text as StartStage) : null
  } catch {
    return null
  }
}
