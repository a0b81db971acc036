/** The choice of what of the ground is shown on the map: a button beside the zoom that opens a small panel. */
import { drawnLight } from '#renderer/view/ground/shown-relief.ts'
import { share } from '#renderer/text/figure.ts'
import { plan } from '#renderer/state/plan/board-plan.ts'
import {
  type GroundOverlay,
  SHARES,
  groundOverlay,
  reliefLit,
  seenAt,
  wantedShare,
  wantShare,
  showGround,
  lookFor,
  lightReliefFrom,
} from '#renderer/state/session/ground-overlay.ts'
import { groundMapWords as say } from '#renderer/words/en-ground-map.ts'
import { groundDrawn } from './base-shown.ts'
import { MapPopover } from './map-popover.tsx'

const CHOICES: readonly GroundOverlay[] = ['none', 'landmark', 'standpoint', 'shade']

function ShareChoice() {
  return (
    <label class="ground-more">
      {say.share}{' '}
      <select
        value={wantedShare.value}
        onChange={(event) => {
          const value = Number(event.currentTarget.value)
          wantShare(SHARES.find((candidate) => candidate === value) ?? wantedShare.value)
        }}
      >
        {SHARES.map((each) => (
          <option key={each} value={each}>
            {share(each)}
          </option>
        ))}
      </select>
    </label>
  )
}

function SeenChoice() {
  return (
    <label class="ground-more">
      {say.seen}{' '}
      <select
        value={seenAt.value}
        onChange={(event) => {
          lookFor(event.currentTarget.value === 'subject' ? 'subject' : 'ground')
        }}
      >
        <option value="ground">{say.seenAt.ground}</option>
        <option value="subject">{say.seenAt.subject}</option>
      </select>
    </label>
  )
}

function LightChoice() {
  return (
    <div class="ground-light">
      <label>
        {say.lit}{' '}
        <select
          value={reliefLit.value}
          onChange={(event) => {
            lightReliefFrom(event.currentTarget.value === 'sun' ? 'sun' : 'north-west')
          }}
        >
          <option value="sun">{say.litFrom.sun}</option>
          <option value="north-west">{say.litFrom['north-west']}</option>
        </select>
      </label>
      {drawnLight.value?.from === 'low' ? <p class="hint">{say.tooLow}</p> : null}
    </div>
  )
}

function Panel() {
  const shown = groundOverlay.value
  return (
    <>
      <fieldset>
        <legend>{say.show}</legend>
        {CHOICES.map((choice) => (
          <div key={choice}>
            <label>
              <input
                type="radio"
                name="ground-overlay"
                checked={choice === shown}
                onChange={() => {
                  showGround(choice)
                }}
              />
              {say.choices[choice]}
            </label>
            {choice === shown && choice === 'landmark' && plan.value?.landmark?.kind !== 'summit' ? (
              <ShareChoice />
            ) : null}
            {choice === shown && choice === 'standpoint' ? <SeenChoice /> : null}
          </div>
        ))}
      </fieldset>
      {shown === 'landmark' || shown === 'standpoint' ? <p class="hint">{say.byGround}</p> : null}
      {groundDrawn.value ? <LightChoice /> : null}
    </>
  )
}

export function GroundMenu() {
  return (
    <MapPopover
      label={say.show}
      path="M1.5 13 6 5.5l3 4.6 1.6-2.2L14.5 13zM6 5.5l-1 4 1.8 1.3L6 13"
      on={groundOverlay.value !== 'none'}
      place="ground-menu"
      Panel={Panel}
    />
  )
}
