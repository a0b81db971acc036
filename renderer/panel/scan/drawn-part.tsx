/** Where the subject may stop and nobody may stand: what was drawn, as a list, and the ways to draw or bring in more. */
import { Question } from '#renderer/part/question.tsx'
import { boardShoot } from '#renderer/state/library/library.ts'
import { stoppingWords as say } from '#renderer/words/en-stopping.ts'
import { scanWords } from '#renderer/words/en-scan.ts'
import { DrawnRow } from './drawn-row.tsx'
import { MoreDrawn } from './more-drawn.tsx'
import { drawnName } from '#renderer/text/drawn-text.ts'
import { KeepOutFields } from './keep-out-fields.tsx'
import { StoppingFields } from './stopping-fields.tsx'

export function DrawnGroundPart() {
  const shoot = boardShoot.value
  if (shoot === null) return null
  const { stoppingGround, keepOuts } = shoot
  return (
    <Question title={scanWords.whereMayItStop}>
      <section class="drawn-part" aria-label={say.titles.stopping}>
        <h3>{say.count(say.titles.stopping, stoppingGround.length)}</h3>
        {stoppingGround.length === 0 ? <p class="hint">{say.empty}</p> : null}
        <ul class="drawn-list">
          {stoppingGround.map((ground, index) => (
            <DrawnRow key={ground.id} shoot={shoot} sort="stopping" index={index} drawn={ground}>
              <StoppingFields shoot={shoot} ground={ground} name={drawnName(shoot, 'stopping', index)} />
            </DrawnRow>
          ))}
        </ul>
        <MoreDrawn sort="stopping" />
      </section>
      <section class="drawn-part" aria-label={say.titles['keep-out']}>
        <h3>{say.count(say.titles['keep-out'], keepOuts.length)}</h3>
        {keepOuts.length === 0 ? <p class="hint">{say.keepOutsEmpty}</p> : null}
        <ul class="drawn-list">
          {keepOuts.map((keepOut, index) => (
            <DrawnRow key={keepOut.id} shoot={shoot} sort="keep-out" index={index} drawn={keepOut}>
              <KeepOutFields shoot={shoot} keepOut={keepOut} name={drawnName(shoot, 'keep-out', index)} />
            </DrawnRow>
          ))}
        </ul>
        <MoreDrawn sort="keep-out" />
      </section>
      <ul class="cautions">
        <li>{say.caution}</li>
      </ul>
    </Question>
  )
}
