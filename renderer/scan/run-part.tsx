/** The scan itself: its cost, start, progress, what it found, and why it found nothing. */
import { Question } from '#renderer/part/question.tsx'
import { scanWords } from '#renderer/words/en-scan.ts'

export function RunPart() {
  return <Question title={scanWords.whereAlong}>{null}</Question>
}
