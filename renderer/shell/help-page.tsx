/** Help: how to begin, every key, the cautions, and the licences. */
import { COMMANDS, acceleratorText } from '#app/commands.ts'
import { CAUTIONS_ALWAYS, cautionsOf } from '#renderer/text/hazard-text.ts'
import { HAZARDS } from '#core/record/spot.ts'
import { dateWords } from '#renderer/words/en-date.ts'
import { stripWords } from '#renderer/words/en-day-strip.ts'
import { words } from '#renderer/words/en.ts'
import { onMac } from './keys.ts'
import { LicenceList } from '#renderer/part/licence-list.tsx'
import { PageFrame } from '#renderer/part/page-frame.tsx'
import { Question } from '#renderer/part/question.tsx'

export function HelpPage() {
  const say = words.board.helpPage
  const keys = COMMANDS.map((command) => [acceleratorText(command.accelerator, onMac()), command.label] as const)
  return (
    <PageFrame title={say.title}>
      <div class="narrow">
        <Question title={say.how}>
          <ol class="steps">
            {say.steps.map((step) => (
              <li key={step}>{step}</li>
            ))}
          </ol>
        </Question>
        <Question title={say.keys}>
          <table class="figures keys">
            <thead>
              <tr>
                <th scope="col">{say.key}</th>
                <th scope="col">{say.does}</th>
              </tr>
            </thead>
            <tbody>
              {[...keys, ...say.more, ...stripWords.keys, ...dateWords.keys].map(([key, does]) => (
                <tr key={key}>
                  <th scope="row">
                    <kbd>{key}</kbd>
                  </th>
                  <td>{does}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </Question>
        <Question title={say.cautions}>
          <ul class="cautions">
            {[
              words.spot.cautions.ground,
              ...cautionsOf(HAZARDS.filter((hazard) => hazard !== 'other')),
              ...CAUTIONS_ALWAYS,
            ].map((caution) => (
              <li key={caution}>{caution}</li>
            ))}
          </ul>
        </Question>
        <Question title={say.licences}>
          <LicenceList />
        </Question>
      </div>
    </PageFrame>
  )
}
