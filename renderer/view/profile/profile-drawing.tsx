/** The profile drawn: the ground filled, the sightlines over it, the landmark's seen part in its hue and its hidden part dark. */
import type { GroundProfile } from '#core/plan/ground-profile.ts'
import type { UnitSystem } from '#core/units/length.ts'
import { elevation, metres, rounded } from '#renderer/text/figure.ts'
import { groundWords } from '#renderer/words/en-ground.ts'
import { figure, linePath } from '#renderer/text/path-text.ts'
import { type ProfilePicture, type ProfileRoom, drawProfile } from './profile-geometry.ts'
import './profile.css'

const { profile: say } = groundWords

export function exaggerationText(exaggeration: number): string {
  return Math.abs(exaggeration - 1) < 1e-6 ? say.trueScale : say.exaggeration(rounded(exaggeration, 2))
}

interface ProfileDrawingProps {
  readonly line: GroundProfile
  readonly picture: ProfilePicture
  readonly units: UnitSystem
  /** What the drawing says, for who does not see it. */
  readonly sentence: string
  /** Metres from the lens of the point that is read; null for none. */
  readonly cursor: number | null
}

/** The picture of a line in a room; text keeps its size in it whatever the units. */
export function profilePicture(line: GroundProfile, room: ProfileRoom, units: UnitSystem): ProfilePicture {
  return drawProfile(line, room, units)
}

export function ProfileDrawing({ line, picture, units, sentence, cursor }: ProfileDrawingProps) {
  const { room } = picture
  const label = say.label(sentence, metres(line.length, units), exaggerationText(picture.exaggeration))
  return (
    <svg class="profile" viewBox={`0 0 ${room.width} ${room.height}`} role="img" aria-label={label}>
      <Axes picture={picture} units={units} />
      <Ground picture={picture} />
      <Lines picture={picture} />
      <Things picture={picture} />
      {cursor === null ? null : <Cursor picture={picture} at={picture.toX(cursor)} />}
      <Tightest picture={picture} units={units} />
    </svg>
  )
}

/** Beyond these the ground ends: what lies deeper than the drawing is not drawn over the labels. */
function footOf({ room }: ProfilePicture): number {
  return room.height - room.bottom
}

function Ground({ picture }: { readonly picture: ProfilePicture }) {
  const foot = footOf(picture)
  return (
    <>
      {picture.ground.map((stretch) => {
        const [first, last] = [stretch[0], stretch.at(-1)]
        if (first === undefined || last === undefined) return null
        const held = stretch.map(({ x, y }) => ({ x, y: Math.min(y, foot) }))
        return (
          <g key={first.x}>
            <path
              class="profile-ground"
              d={`${linePath(held, false)}L${figure(last.x)},${foot}L${figure(first.x)},${foot}Z`}
            />
            <path class="profile-surface" d={linePath(held, false)} />
          </g>
        )
      })}
    </>
  )
}

function Lines({ picture }: { readonly picture: ProfilePicture }) {
  return (
    <>
      <path class="profile-foot-line" d={linePath(picture.footLine, false)} />
      {picture.grazingLine === null ? null : <path class="profile-line" d={linePath(picture.grazingLine, false)} />}
      <path class="profile-line" d={linePath(picture.topLine, false)} />
    </>
  )
}

/** Half the width, pixels, at which landmark and subject are drawn: signs in place of shapes too narrow to be seen. */
const LANDMARK_HALF = 4.5
const SUBJECT_HALF = 2
/** Pixels that a thing is drawn high at least. */
const LEAST_HIGH = 4

function Things({ picture }: { readonly picture: ProfilePicture }) {
  const { landmark, lens, lensFoot, subject, obstructions } = picture
  const top = Math.min(landmark.top, landmark.foot - LEAST_HIGH)
  const sill = Math.max(top, Math.min(landmark.sill, landmark.foot))
  const bar = (from: number, until: number): string =>
    `M${figure(landmark.x - LANDMARK_HALF)},${figure(from)}h${2 * LANDMARK_HALF}V${figure(until)}h${-2 * LANDMARK_HALF}Z`
  const subjectTop = Math.min(subject.top, subject.foot - LEAST_HIGH)
  return (
    <>
      {obstructions.map(({ x, foot, top: crown }) => (
        <path
          key={x}
          class="profile-obstruction"
          d={`M${figure(x)},${figure(foot)}V${figure(crown)}M${figure(x - 3)},${figure(crown)}h6`}
        />
      ))}
      {sill - top > 0.2 ? <path class="profile-landmark" d={bar(top, sill)} /> : null}
      {landmark.foot - sill > 0.2 ? <path class="profile-hidden" d={bar(sill, landmark.foot)} /> : null}
      <path
        class="profile-subject"
        d={`M${figure(subject.x - SUBJECT_HALF)},${figure(subjectTop)}h${2 * SUBJECT_HALF}V${figure(subject.foot)}h${-2 * SUBJECT_HALF}Z`}
      />
      <path class="profile-stem" d={`M${figure(lens.x)},${figure(lensFoot)}V${figure(lens.y)}`} />
      <circle class="profile-lens" cx={figure(lens.x)} cy={figure(lens.y)} r={3} />
    </>
  )
}

function Tightest({ picture, units }: { readonly picture: ProfilePicture; readonly units: UnitSystem }) {
  const { tightest, room } = picture
  if (tightest === null) return null
  const { x, y, line } = tightest
  const text = metres(tightest.metres, units)
  const half = text.length * 2.8
  const textX = Math.max(room.left + half, Math.min(room.width - room.right - half - 8, x))
  const under = y + 19 < room.height - room.bottom
  return (
    <g>
      <path class="profile-gap" d={`M${figure(x)},${figure(y)}V${figure(line)}`} />
      <path class="profile-tightest" transform={`translate(${figure(x)},${figure(y)})`} d="M0,1.5L4.5,8.5H-4.5Z" />
      <text class="profile-text profile-mark" x={figure(textX)} y={figure(under ? y + 18 : y - 6)} text-anchor="middle">
        {text}
      </text>
    </g>
  )
}

function Cursor({ picture, at }: { readonly picture: ProfilePicture; readonly at: number }) {
  return <path class="profile-cursor" d={`M${figure(at)},${picture.room.top - 4}V${footOf(picture)}`} />
}

function Axes({ picture, units }: { readonly picture: ProfilePicture; readonly units: UnitSystem }) {
  const { room, along, up } = picture
  const foot = footOf(picture)
  return (
    <g aria-hidden="true">
      {up.map(({ at, metres: height }) => (
        <g key={height}>
          <path class="profile-grid" d={`M${room.left},${figure(at)}H${room.width - room.right}`} />
          <text class="profile-text" x={room.left - 5} y={figure(at + 3.5)} text-anchor="end">
            {elevation(height, units)}
          </text>
        </g>
      ))}
      <path class="profile-axis" d={`M${room.left},${foot}H${room.width - room.right}`} />
      {along.map(({ at, metres: distance }) => (
        <g key={distance}>
          <path class="profile-axis" d={`M${figure(at)},${foot}v3`} />
          <text class="profile-text" x={figure(at)} y={foot + 13} text-anchor={distance === 0 ? 'start' : 'middle'}>
            {distance === 0 ? say.lens : metres(distance, units)}
          </text>
        </g>
      ))}
    </g>
  )
}
