/** The profile on the board: the drawing, and a point in it that pointer and keys move, read out and shown on the map. */
import { useEffect, useRef } from 'preact/hooks'
import type { GroundProfile } from '#core/plan/ground-profile.ts'
import { ProfileDrawing, exaggerationText, profilePicture } from '#renderer/view/profile/profile-drawing.tsx'
import { keyedPoint } from '#renderer/view/profile/profile-keys.ts'
import { profilePoint, readProfileAt } from '#renderer/state/session/profile-point.ts'
import { settings } from '#renderer/state/library/settings.ts'
import { groundWords } from '#renderer/words/en-ground.ts'
import { profileReading } from '#renderer/text/ground-text.ts'

const { profile: say } = groundWords

const ROOM = { width: 344, height: 158, left: 42, right: 9, top: 12, bottom: 18 } as const

interface ProfileProps {
  readonly line: GroundProfile
  readonly sentence: string
}

export function ProfileReader({ line, sentence }: ProfileProps) {
  const { units } = settings.value
  const picture = profilePicture(line, ROOM, units)
  const handle = useRef<HTMLDivElement>(null)
  useEffect(() => () => readProfileAt(null), [])
  const point = profilePoint.value === null ? null : Math.min(profilePoint.value, line.length)
  const pointAt = (event: PointerEvent): void => {
    const box = handle.current?.getBoundingClientRect()
    if (box !== undefined && box.width > 0)
      readProfileAt(picture.toDistance(((event.clientX - box.left) / box.width) * ROOM.width))
  }
  const start = line.tightest?.distance ?? 0
  const leave = (): void => {
    readProfileAt(document.activeElement === handle.current ? start : null)
  }
  const onKey = (event: KeyboardEvent): void => {
    const to = keyedPoint(event.key, event.shiftKey, point ?? start, line.length)
    if (to === null || event.ctrlKey || event.metaKey || event.altKey) return
    event.preventDefault()
    event.stopPropagation()
    readProfileAt(to)
  }
  const text = point === null ? say.hint : profileReading(line, point, units)
  return (
    <div class="profile-reader">
      <div class="profile-frame">
        <ProfileDrawing line={line} picture={picture} units={units} sentence={sentence} cursor={point} />
        <div
          ref={handle}
          class="profile-handle"
          role="slider"
          tabIndex={0}
          aria-label={say.cursor}
          aria-valuemin={0}
          aria-valuemax={Math.round(line.length)}
          aria-valuenow={Math.round(point ?? start)}
          aria-valuetext={profileReading(line, point ?? start, units)}
          onPointerMove={pointAt}
          onPointerDown={pointAt}
          onPointerLeave={leave}
          onFocus={() => readProfileAt(profilePoint.peek() ?? start)}
          onBlur={() => readProfileAt(null)}
          onKeyDown={onKey}
        />
      </div>
      <p class={point === null ? 'hint' : 'profile-read'}>{text}</p>
      <p class="hint">{say.note(exaggerationText(picture.exaggeration))}</p>
    </div>
  )
}
