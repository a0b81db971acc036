/** The first steps of an empty shoot, over the map: what is photographed, what stands behind, and the first spot laid to suit both. */
import type { ComponentChildren } from 'preact'
import { useEffect, useId, useRef } from 'preact/hooks'
import { RECORD_LIMITS } from '#core/record/record-limits.ts'
import type { Shoot } from '#core/record/shoot.ts'
import { SUBJECT_KINDS, type Subject, type SubjectKind } from '#core/scene/subject.ts'
import { resized, sizeAs } from '#renderer/page/shoot/typed-changes.ts'
import { Choice } from '#renderer/part/choice.tsx'
import { LengthField } from '#renderer/part/figure-field.tsx'
import { Icon } from '#renderer/part/icon.tsx'
import { landmarkSaid, layFirstSpot } from '#renderer/state/act/first-spot-acts.ts'
import { changeShoot } from '#renderer/state/library/history.ts'
import { shoot } from '#renderer/state/library/library.ts'
import { settings } from '#renderer/state/library/settings.ts'
import { settleUnfinished } from '#renderer/state/library/unfinished.ts'
import {
  FIRST_STEPS,
  type FirstStep,
  type StepsShown,
  closeSteps,
  openStep,
  stepPassed,
  stepsShown,
} from '#renderer/state/session/first-steps.ts'
import { page, placing } from '#renderer/state/session/navigation.ts'
import { metres } from '#renderer/text/figure.ts'
import { landmarkName, subjectName } from '#renderer/text/names.ts'
import { firstStepsWords as say } from '#renderer/words/en-first-steps.ts'
import { words } from '#renderer/words/en.ts'
import { LandmarkStep } from './first-landmark.tsx'
import './first-steps.css'

function SubjectStep({ home }: { readonly home: Shoot }) {
  const { subject } = home
  const change = (next: Subject): void => void changeShoot(words.shoot.edit.subject, { ...home, subject: next })
  return (
    <>
      <Choice
        label={say.kind}
        value={subject.kind}
        options={SUBJECT_KINDS.map((kind) => [kind, words.shoot.subjectKinds[kind]] as const)}
        onChoose={(kind: SubjectKind) => change({ ...resized(subject, sizeAs(subject, kind)), kind })}
      />
      <div class="field-row">
        {(['length', 'width', 'height'] as const).map((side) => (
          <LengthField
            key={side}
            label={say[side]}
            value={subject[side]}
            limits={RECORD_LIMITS.subjectSize}
            onTake={(size) => change(resized(subject, { [side]: size }))}
          />
        ))}
      </div>
      <div class="buttons">
        <button type="button" class="button button-small button-main" onClick={() => stepPassed('subject')}>
          {say.next}
        </button>
      </div>
    </>
  )
}

function SpotStep({ home }: { readonly home: Shoot }) {
  const [landmark] = home.landmarks
  return (
    <>
      <p class="hint">{landmark === undefined ? say.layFreely : say.layHint(landmarkSaid(landmark))}</p>
      <div class="buttons">
        <button type="button" class="button button-small button-main" onClick={() => void layFirstSpot()}>
          <Icon name="add" /> {say.lay}
        </button>
        <Skip step="spot" />
      </div>
    </>
  )
}

function Skip({ step }: { readonly step: FirstStep }) {
  return (
    <button type="button" class="button button-small button-quiet" onClick={() => stepPassed(step)}>
      {say.skip}
    </button>
  )
}

/** What has come of a step, beside its question. */
function outcome(step: FirstStep, home: Shoot, done: boolean): string {
  const { units } = settings.value
  if (step === 'subject') {
    const { length, height } = home.subject
    return say.sized(subjectName(home.subject), metres(Math.max(length, height), units))
  }
  const [landmark] = home.landmarks
  if (step === 'spot' || (landmark === undefined && !done)) return ''
  if (landmark === undefined) return say.skipped
  const name = landmark.name.trim() === '' ? words.shoot.landmarkKinds[landmark.kind] : landmarkName(landmark)
  return say.sized(name, metres(landmark.height, units))
}

interface StepProps {
  readonly step: FirstStep
  readonly number: number
  readonly home: Shoot
  readonly shown: StepsShown
  readonly children: ComponentChildren
}

function Step({ step, number, home, shown, children }: StepProps) {
  const id = useId()
  const open = shown.open === step
  const done = shown.done.includes(step)
  const said = outcome(step, home, done)
  return (
    <li class={open ? 'first-step open' : 'first-step'}>
      <h3>
        <button type="button" aria-expanded={open} aria-controls={open ? id : undefined} onClick={() => openStep(step)}>
          <span class={done ? 'step-number done' : 'step-number'} aria-hidden="true">
            {done ? '✓' : number}
          </span>
          {say.steps[step]}
          {open || said === '' ? null : <span class="step-outcome">{said}</span>}
        </button>
      </h3>
      {open ? (
        <div class="step-body" id={id}>
          {children}
        </div>
      ) : null}
    </li>
  )
}

/** A field elsewhere, in which Escape is its own matter. */
function typesElsewhere(target: EventTarget | null, panel: HTMLElement | null): boolean {
  if (!(target instanceof HTMLElement) || panel?.contains(target) === true) return false
  return target.matches('input, textarea, select') || target.isContentEditable
}

/** Escape closes the panel: from within, once no field there has anything to bring back, and from wherever on the board nothing is typed. */
function useEscape(): { readonly current: HTMLElement | null } {
  const panel = useRef<HTMLElement>(null)
  useEffect(() => {
    const onKey = (event: KeyboardEvent): void => {
      if (event.key !== 'Escape' || event.defaultPrevented || event.repeat || event.isComposing) return
      if (page.peek() !== 'board' || typesElsewhere(event.target, panel.current)) return
      // A list closes by Escape without telling whether it was open.
      if (event.target instanceof HTMLElement && event.target.matches('select')) return
      event.preventDefault()
      settleUnfinished()
      closeSteps()
    }
    addEventListener('keydown', onKey)
    return () => removeEventListener('keydown', onKey)
  }, [])
  return panel
}

/** Whoever goes by keys goes on with the step that has opened, unless they are somewhere else. */
function useFocusOnStep(panel: { readonly current: HTMLElement | null }, open: FirstStep): void {
  useEffect(() => {
    if (document.activeElement !== document.body) return
    panel.current?.querySelector<HTMLElement>('.step-body :is(select, input, button)')?.focus({ preventScroll: true })
  }, [panel, open])
}

function Panel({ home, shown }: { readonly home: Shoot; readonly shown: StepsShown }) {
  const id = useId()
  const panel = useEscape()
  useFocusOnStep(panel, shown.open)
  const bodies: Readonly<Record<FirstStep, ComponentChildren>> = {
    subject: <SubjectStep home={home} />,
    landmark: <LandmarkStep home={home} skip={<Skip step="landmark" />} />,
    spot: <SpotStep home={home} />,
  }
  return (
    <section class="first-steps" ref={panel} aria-labelledby={id}>
      <div class="first-steps-head">
        <h2 id={id}>{say.title}</h2>
        <button type="button" class="icon-button" aria-label={say.close} title={say.closeHint} onClick={closeSteps}>
          <Icon name="close" />
        </button>
      </div>
      <ol>
        {FIRST_STEPS.map((step, index) => (
          <Step key={step} step={step} number={index + 1} home={home} shown={shown}>
            {bodies[step]}
          </Step>
        ))}
      </ol>
    </section>
  )
}

/** Out of the way while something is being placed on the map that it lies over. */
export function FirstSteps() {
  const home = shoot.value
  const shown = stepsShown.value
  if (home === null || shown === null || placing.value !== null) return null
  return <Panel key={home.id} home={home} shown={shown} />
}
