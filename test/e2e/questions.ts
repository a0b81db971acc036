/** The questions of the board in the order in which they stand. */
import { groundWords } from '#renderer/words/en-ground.ts'
import { lightWords } from '#renderer/words/en-light.ts'
import { toleranceWords } from '#renderer/words/en-tolerance.ts'
import { words } from '#renderer/words/en.ts'

export const QUESTIONS = [
  words.answers.whichLens,
  words.answers.howSharp,
  lightWords.question,
  groundWords.question,
  toleranceWords.question,
  words.answers.where.title,
  words.spot.getThere,
  words.spot.whoAsked,
  words.spot.watchFor,
  words.spot.title,
]
