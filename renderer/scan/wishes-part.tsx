/** What the picture should be: each demand a must or a wish with its weight. */
import { Question } from '#renderer/part/question.tsx'
import { scanWords } from '#renderer/words/en-scan.ts'

export function WishesPart() {
  return <Question title={scanWords.whatPicture}>{null}</Question>
}
