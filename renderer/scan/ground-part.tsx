/** Where the subject may stop and nobody may stand: what was drawn, as a list, and the ways to draw or bring in more. */
import { Question } from '#renderer/part/question.tsx'
import { scanWords } from '#renderer/words/en-scan.ts'

export function GroundPart() {
  return <Question title={scanWords.whereMayItStop}>{null}</Question>
}
