/** A still map of a spot: the base painted once into a picture, the plan's drawing over it as vectors, scale bar and north. */
import { useEffect, useState } from 'preact/hooks'
import type { Assessment } from '#core/plan/assess.ts'
import type { Plan } from '#core/plan/plan.ts'
import type { UnitSystem } from '#core/units/length.ts'
import { type PlanDrawing, drawPlan, wedgeReach } from '#renderer/view/drawing/plan-drawing.ts'
import { landmarkName } from '#renderer/text/names.ts'
import { type BaseMap, paintBase } from './base-map.ts'
import { North, StillScale } from './scale-and-north.tsx'
import { stillView } from './still-view.ts'
import './small-map.css'

export interface SmallMapProps {
  readonly plan: Plan
  readonly assessment: Assessment
  readonly width: number
  readonly height: number
  readonly base: BaseMap
  readonly units: UnitSystem
  readonly label: string
  readonly scale?: boolean
  /** Told once the base is painted; `missing` counts tiles that could not be had. */
  readonly onPainted?: (painted: { readonly missing: number }) => void
}

export function SmallMap(props: SmallMapProps) {
  const { plan, assessment, width, height, base, units, label, onPainted } = props
  const still = stillView(plan, width, height)
  const [picture, setPicture] = useState<string | null>(null)
  const key =
    still === null ? '' : `${base.key} ${still.centre.lat} ${still.centre.lon} ${still.zoom} ${width} ${height}`
  useEffect(() => {
    if (still === null) return undefined
    const stop = new AbortController()
    void paintBase(base, still.centre, still.zoom, width, height, stop.signal).then((painted) => {
      if (stop.signal.aborted) return
      setPicture(painted.picture)
      onPainted?.({ missing: painted.missing })
    })
    return () => stop.abort()
    // oxlint-disable-next-line react-hooks/exhaustive-deps -- the key stands for everything the base depends on
  }, [key])
  if (still === null) return null
  const drawing = drawPlan(plan, assessment, null, still.view, wedgeReach(plan))
  return (
    <svg
      class="small-map"
      viewBox={`0 0 ${width} ${height}`}
      width={width}
      height={height}
      role="img"
      aria-label={label}
    >
      <rect width={width} height={height} class="small-map-paper" />
      {picture === null ? null : <image href={picture} width={width} height={height} preserveAspectRatio="none" />}
      <StillPlan drawing={drawing} />
      {props.scale === false ? null : (
        <StillScale view={still.view} centre={still.centre} width={width} height={height} units={units} />
      )}
      {props.scale === false ? null : <North width={width} />}
    </svg>
  )
}

function StillPlan({ drawing }: { readonly drawing: PlanDrawing }) {
  const { subject, standpoint, wedge, landmark, parking } = drawing
  const joined = Math.hypot(subject.at.x - standpoint.x, subject.at.y - standpoint.y) < 16
  return (
    <g class="still-plan">
      {wedge === null ? null : (
        <>
          <path d={wedge.area} class="still-wedge" />
          <path d={wedge.left + wedge.right} class="still-wedge-edge" />
        </>
      )}
      {landmark === null ? null : (
        <>
          <path d={linesTo(standpoint, landmark.at)} class="still-sightline" />
          <path d={landmark.outline} class="still-landmark-halo" />
          <path d={landmark.outline} class="still-landmark" />
          {landmark.size < 14 ? (
            <circle cx={landmark.at.x} cy={landmark.at.y} r={8} class="still-landmark-ring" />
          ) : null}
          <text x={landmark.at.x} y={landmark.box.top - 8} class="still-name">
            {landmarkName(landmark)}
          </text>
        </>
      )}
      {parking === null ? null : (
        <g transform={`translate(${parking.x},${parking.y})`}>
          <rect x={-7} y={-7} width={14} height={14} rx={2} class="still-parking" />
          <text y={4} class="still-parking-letter">
            P
          </text>
        </g>
      )}
      {joined ? <circle cx={standpoint.x} cy={standpoint.y} r={13} class="still-group" /> : null}
      {joined ? (
        <g transform={`translate(${subject.at.x},${subject.at.y}) rotate(${subject.heading})`}>
          <path d="M-2.5,6V-4L0,-7L2.5,-4V6Z" class="still-subject" />
        </g>
      ) : (
        <path d={subject.body + subject.notch} class="still-subject" />
      )}
      <g
        transform={`translate(${standpoint.x},${standpoint.y}) rotate(${drawing.aim}) ${joined ? 'translate(0,13)' : ''}`}
      >
        <path d="M0,-9L6,2L0,6L-6,2Z" class="still-standpoint" />
      </g>
    </g>
  )
}

function linesTo(from: { x: number; y: number }, to: { x: number; y: number }): string {
  return `M${from.x.toFixed(1)},${from.y.toFixed(1)}L${to.x.toFixed(1)},${to.y.toFixed(1)}`
}
