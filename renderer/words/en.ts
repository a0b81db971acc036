/** Every word the user sees, gathered from the files of the page's parts. */
import { answerWords } from './en-answers.ts'
import { boardWords } from './en-board.ts'
import { problemWords } from './en-problems.ts'
import { shootWords } from './en-shoot.ts'
import { spotWords } from './en-spot.ts'

export const words = {
  board: boardWords,
  answers: answerWords,
  problems: problemWords,
  shoot: shootWords,
  spot: spotWords,
} as const
