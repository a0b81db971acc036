/** The three things as they are drawn: rectangle with notch, kite, hatched footprint; each with what it is grabbed and focused by. */
import type { ComponentChildren } from 'preact'
import {
  GRAB_SIZE,
  GROUP_RADIUS,
  type LandmarkDrawing,
  type SubjectDrawing,
  pointMoved,
  toward,
} from './plan-drawing.ts'
import { type Grip, gripName } from '#core/plan/grip.ts'
import type { Point } from './plan-view.ts'
import { steadyPart } from '#renderer/part/steady-part.tsx'
import { figure } from '#renderer/text/path-text.ts'

/** The lens is at the tip, 0, 0; the kite points up and is turned to the aim. */
export const KITE = 'M0,0L8.5,15.5L0,21.5L-8.5,15.5Z'
const KITE_MIDDLE = 12.5
/** Radius within which a thing is taken, however small it is drawn. */
const REACH = 16

function shift(at: Point): string {
  return `translate(${figure(at.x)},${figure(at.y)})`
}

interface GrabProps {
  readonly grip: Grip
  readonly name: string
  readonly pressed: boolean
  readonly children: ComponentChildren
}

/** A part that pointer and keyboard take hold of. */
export function Grab({ grip, name, pressed, children }: GrabProps) {
  return (
    <g
      class={`grab grab-${grip.on}`}
      data-grip={gripName(grip)}
      tabindex={0}
      role="button"
      aria-pressed={pressed}
      aria-label={name}
    >
      {children}
    </g>
  )
}

/** What lies around a place, drawn about 0, 0: when the place moves, one attribute moves it all. */
export function About({ at, children }: { readonly at: Point; readonly children: ComponentChildren }) {
  return <g transform={shift(at)}>{children}</g>
}

export function FocusRing({ radius }: { readonly radius: number }) {
  return <circle class="focus-ring" r={radius} />
}

interface ThingProps {
  readonly name: string
  readonly pressed: boolean
}

export const SubjectMark = steadyPart(function subjectMark({
  subject,
  name,
  pressed,
}: ThingProps & { readonly subject: SubjectDrawing }) {
  const small = subject.size < GRAB_SIZE
  return (
    <Grab grip={{ on: 'subject' }} name={name} pressed={pressed}>
      <About at={subject.at}>
        <circle class="hit" r={REACH} />
        {small ? <circle class="grab-ring" r={REACH - 1} /> : null}
      </About>
      <path class="subject-body" d={subject.body + subject.notch} />
      <About at={subject.at}>
        <FocusRing radius={Math.max(REACH, subject.size / 2) + 4} />
      </About>
    </Grab>
  )
})

interface HandleProps {
  readonly subject: SubjectDrawing
  readonly name: string
}

/** The notch's own handle: a stem out of the front with a bead to turn by. */
export const HeadingHandle = steadyPart(function headingHandle({ subject, name }: HandleProps) {
  const heading = Math.round(subject.heading * 10) / 10
  const stem = pointMoved(subject.handle, toward(subject.heading), -GRAB_SIZE)
  return (
    <g
      class="grab grab-heading"
      data-grip="heading"
      tabindex={0}
      role="slider"
      aria-label={name}
      aria-valuemin={0}
      aria-valuemax={360}
      aria-valuenow={heading}
      aria-valuetext={`${heading}°`}
    >
      <path
        class="handle-stem"
        d={`M${figure(stem.x)},${figure(stem.y)}L${figure(subject.handle.x)},${figure(subject.handle.y)}`}
      />
      <About at={subject.handle}>
        <circle class="hit" r={11} />
        <circle class="handle" r={4} />
        <FocusRing radius={9} />
      </About>
    </g>
  )
})

interface KiteProps extends ThingProps {
  readonly at: Point
  readonly aim: number
}

export const StandpointMark = steadyPart(function standpointMark({ at, aim, name, pressed }: KiteProps) {
  return (
    <Grab grip={{ on: 'standpoint' }} name={name} pressed={pressed}>
      <g transform={`${shift(at)} rotate(${figure(aim)})`}>
        <circle class="hit" cx={0} cy={KITE_MIDDLE} r={REACH} />
        <path class="standpoint-kite" d={KITE} />
        <circle class="focus-ring" cy={KITE_MIDDLE} r={REACH} />
      </g>
    </Grab>
  )
})

/** Subject and standpoint as one ring while the map is too far away to tell them apart. */
export function PairMark({ subject, standpoint, aim, name, pressed }: ThingProps & PairProps) {
  const { at, heading } = subject
  const apart = Math.hypot(standpoint.x - at.x, standpoint.y - at.y)
  const away = apart < 0.01 ? toward(aim + 180) : { x: (standpoint.x - at.x) / apart, y: (standpoint.y - at.y) / apart }
  const kite = pointMoved({ x: 0, y: 0 }, away, GROUP_RADIUS + 1)
  return (
    <Grab grip={{ on: 'pair' }} name={name} pressed={pressed}>
      <About at={at}>
        <circle class="hit" r={GROUP_RADIUS + 6} />
        <g transform={`${shift(kite)} rotate(${figure(aim)}) scale(0.72)`}>
          <path class="standpoint-kite" d={KITE} />
        </g>
        <circle class="pair-ring" r={GROUP_RADIUS} />
        <g transform={`rotate(${figure(heading)})`}>
          <path class="subject-body" d="M-3.2,8.5V-6L0,-9.6L3.2,-6V8.5Z" />
        </g>
        <FocusRing radius={GROUP_RADIUS + 4.5} />
      </About>
    </Grab>
  )
}

interface PairProps {
  readonly subject: SubjectDrawing
  readonly standpoint: Point
  readonly aim: number
}

/** How a landmark looks, whether it can be taken hold of or not. */
export function LandmarkShape({ landmark, hatch }: LandmarkProps) {
  const small = landmark.size < GRAB_SIZE
  const { at } = landmark
  return (
    <>
      {small ? <circle class="grab-ring" cx={figure(at.x)} cy={figure(at.y)} r={REACH - 1} /> : null}
      <path class={`landmark-foot landmark-${landmark.kind}`} d={landmark.outline} fill={`url(#${hatch})`} />
      {small ? null : <path class="landmark-ticks" d={landmark.ticks} />}
      {landmark.kind === 'summit' ? <path class="summit-mark" transform={shift(at)} d="M0,-7L6.5,4.5H-6.5Z" /> : null}
    </>
  )
}

export const LandmarkMark = steadyPart(function landmarkMark({
  landmark,
  hatch,
  name,
  pressed,
}: ThingProps & LandmarkProps) {
  const small = landmark.size < GRAB_SIZE
  const { at } = landmark
  return (
    <Grab grip={{ on: 'landmark' }} name={name} pressed={pressed}>
      <path class="landmark-hit" d={landmark.outline} />
      {small ? (
        <About at={at}>
          <circle class="hit" r={REACH} />
        </About>
      ) : null}
      <LandmarkShape landmark={landmark} hatch={hatch} />
      {small ? (
        <About at={at}>
          <FocusRing radius={REACH + 4} />
        </About>
      ) : (
        <path class="focus-line" d={landmark.outline} />
      )}
    </Grab>
  )
})

interface LandmarkProps {
  readonly landmark: LandmarkDrawing
  /** Id of the hatch within the same drawing. */
  readonly hatch: string
}

export const ParkingMark = steadyPart(function parkingMark({
  at,
  name,
}: {
  readonly at: Point
  readonly name: string
}) {
  return (
    <Grab grip={{ on: 'parking' }} name={name} pressed={false}>
      <g transform={shift(at)}>
        <circle class="hit" r={13} />
        <rect class="parking-mark" x={-8} y={-8} width={16} height={16} rx={2.5} />
        <text class="parking-letter" y={4.6}>
          P
        </text>
        <FocusRing radius={13} />
      </g>
    </Grab>
  )
})

/** Strokes of the landmark's hue across its footprint. */
export function Hatch({ id }: { readonly id: string }) {
  return (
    <pattern id={id} width={5} height={5} patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
      <rect class="hatch-ground" width={5} height={5} />
      <rect class="hatch-stroke" width={2.2} height={5} />
    </pattern>
  )
}

/** A text on a plate of paper, so that it reads on any map. */
export function Plate({ at, text, width }: { readonly at: Point; readonly text: string; readonly width: number }) {
  return (
    <g class="plate" transform={shift(at)}>
      <rect x={-width / 2} y={-10.5} width={width} height={21} rx={3} />
      <text y={4.6}>{text}</text>
    </g>
  )
}
