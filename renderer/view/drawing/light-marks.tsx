/** The light as it is drawn: shadows, sides lit and in shade, the ring of hours with sun and moon, the way the light comes. */
import type { BodyReading, LightReading } from '#core/plan/light-reading.ts'
import type { HourLabel } from './hour-ring.ts'
import { type SideStroke, lightRays, litMoon, strokePaths } from './light-drawing.ts'
import type { ThingsLight } from './things-light.ts'
import type { Point } from './plan-view.ts'
import { MOON_MARK, type RingDrawing } from './ring-marks.ts'
import { figure, linePath } from '#renderer/text/path-text.ts'

/** The landmark's shadow is fainter than the subject's: it comes from farther away, with softer edges than are drawn. */
export function Shadows({ subjectShadow, landmarkShadow }: ThingsLight) {
  // All outlines of a thing run the same way round, so that where they overlap the shade is no deeper.
  const path = (outlines: readonly (readonly Point[])[]): string =>
    outlines.map((outline) => linePath(outline, true)).join('')
  return (
    <>
      <path class="ground-shadow landmark-shadow" d={path(landmarkShadow)} />
      <path class="ground-shadow subject-shadow" d={path(subjectShadow)} />
    </>
  )
}

/** Each stroke on a hair of the other brightness, so that it reads on any ground. */
export function SideStrokes({ strokes }: { readonly strokes: readonly SideStroke[] }) {
  const { lit, shade } = strokePaths(strokes)
  return (
    <g class="side-strokes" aria-hidden="true">
      {shade === '' ? null : <path class="shade-hair" d={shade} />}
      {shade === '' ? null : <path class="shade-side" d={shade} />}
      {lit === '' ? null : <path class="lit-hair" d={lit} />}
      {lit === '' ? null : <path class="lit-side" d={lit} />}
    </g>
  )
}

interface RaysProps {
  readonly at: Point
  readonly sun: BodyReading
  /** Pixels between the place and the rays' tip. */
  readonly gap: number
}

/** Nothing while the sun is down. */
export function LightRays({ at, sun, gap }: RaysProps) {
  if (!sun.up) return null
  const d = lightRays(at, sun.azimuth, gap)
  return (
    <g aria-hidden="true">
      <path class="light-rays-halo" d={d} />
      <path class="light-rays" d={d} />
    </g>
  )
}

function SunMark({ ring, up }: { readonly ring: RingDrawing; readonly up: boolean }) {
  const { middle, sun } = ring
  const { at, radius } = sun
  const place = { cx: figure(at.x - middle.x), cy: figure(at.y - middle.y) }
  if (!up) return <circle class="sun-down" {...place} r={radius} />
  return (
    <>
      <circle class="sun-halo" {...place} r={figure(radius + 3.6)} />
      <circle class="sun-up" {...place} r={figure(radius)} />
    </>
  )
}

function MoonMark({ at, phase }: { readonly at: Point; readonly phase: LightReading['moon']['phase'] }) {
  return (
    <g class="moon-mark" transform={`translate(${figure(at.x)},${figure(at.y)}) rotate(${figure(phase.tilt)})`}>
      <circle class="moon-dark" r={MOON_MARK} />
      <path class="moon-lit" d={litMoon(MOON_MARK, phase.lit)} />
      <circle class="moon-rim" r={MOON_MARK} />
    </g>
  )
}

interface HourRingProps {
  readonly ring: RingDrawing
  readonly labels: readonly HourLabel[]
  readonly light: LightReading
}

/** The ring says nothing that the day strip doesn't say in words; it takes neither pointer nor focus. */
export function HourRing({ ring, labels, light }: HourRingProps) {
  const { middle, radius, beads, moon } = ring
  // The small ones last, so that none hides behind another.
  const ordered = beads.toSorted((one, other) => other.radius - one.radius)
  return (
    // Drawn about its middle: where that is moved, the beads lie as they lay.
    <g class="hour-ring" aria-hidden="true" transform={`translate(${figure(middle.x)},${figure(middle.y)})`}>
      <circle class="hour-line" r={figure(radius)} />
      {ordered.map(({ at, instant, hour, hidden, radius: size }) => (
        <circle
          key={instant}
          class={hidden ? 'hour-bead bead-hidden' : 'hour-bead'}
          data-hour={hour}
          cx={figure(at.x - middle.x)}
          cy={figure(at.y - middle.y)}
          r={figure(size)}
        />
      ))}
      {moon === null ? null : <MoonMark at={{ x: moon.x - middle.x, y: moon.y - middle.y }} phase={light.moon.phase} />}
      <SunMark ring={ring} up={light.sun.up} />
      {labels.map(({ text, at }) => (
        // No two beads of a day have the same name but where an hour is shown twice, side by side.
        <text key={text} class="hour-name" x={figure(at.x - middle.x)} y={figure(at.y - middle.y + 4.2)}>
          {text}
        </text>
      ))}
    </g>
  )
}
