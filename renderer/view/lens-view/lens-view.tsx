/** The view through the lens on the board: the frame as large as its place allows, and its controls. */
import { lensBoard } from '#renderer/state/plan/calm-board.ts'
import { drawnOnPage } from './artists-lost.ts'
import { useLayoutEffect, useRef, useState } from 'preact/hooks'
import { assessment, plan } from '#renderer/state/plan/board-plan.ts'
import { picturePlace, putPicture } from '#renderer/state/session/picture-place.ts'
import { lensViewWords } from '#renderer/words/en-lens-view.ts'
import { LensControls } from './lens-controls.tsx'
import { LensFrame } from './lens-frame.tsx'

/** The frame takes no more than this part of the window's height, and leaves the lines of the answers below it their place. */
const MOST_OF_WINDOW = 0.4
const LEAST_HEIGHT = 150
/** CSS pixels of the controls, the lines of all answers, and the first rows of an open one. */
const BELOW = 440

interface Room {
  readonly width: number
  readonly height: number
}

/** The largest frame of the given sides that fits. */
export function frameSize(room: Room, sides: Room): Room {
  const scale = Math.min(room.width / sides.width, room.height / sides.height)
  return { width: Math.max(1, Math.floor(sides.width * scale)), height: Math.max(1, Math.floor(sides.height * scale)) }
}

function useRoom(): { readonly place: { current: HTMLDivElement | null }; readonly room: Room } {
  const place = useRef<HTMLDivElement | null>(null)
  const [room, setRoom] = useState<Room>({ width: 376, height: 300 })
  useLayoutEffect(() => {
    const element = place.current
    if (element === null) return undefined
    const measure = (): void => {
      const column = element.closest('.board-right')?.clientHeight ?? innerHeight
      const beside = Math.max(LEAST_HEIGHT, Math.min(innerHeight * MOST_OF_WINDOW, column - BELOW))
      // Where it is large, its place has a height of its own.
      const height = picturePlace.peek() === 'beside' ? beside : element.clientHeight
      const width = element.clientWidth
      if (width > 0) setRoom((old) => (old.width === width && old.height === height ? old : { width, height }))
    }
    measure()
    const watch = new ResizeObserver(measure)
    watch.observe(element)
    addEventListener('resize', measure)
    const unfollow = picturePlace.subscribe(() => void requestAnimationFrame(measure))
    return () => {
      unfollow()
      watch.disconnect()
      removeEventListener('resize', measure)
    }
  }, [])
  return { place, room }
}

/** Figures in fields are read, not watched. */
function Controls() {
  const now = lensBoard.plan.value
  const seen = lensBoard.assessment.value
  return now === null || seen === null ? null : <LensControls plan={now} />
}

/** Over the whole window it is left as a page is. */
function leaveWindow(event: KeyboardEvent): void {
  if (event.key !== 'Escape' || event.defaultPrevented || picturePlace.peek() !== 'window') return
  event.preventDefault()
  event.stopPropagation()
  putPicture('beside')
}

export function LensView() {
  const { place, room } = useRoom()
  const now = plan.value
  const seen = assessment.value
  return (
    <section class={`lens-view lens-${picturePlace.value}`} aria-label={lensViewWords.view} onKeyDown={leaveWindow}>
      <div class="lens-place" ref={place}>
        {now === null || seen === null ? (
          <div class="lens-empty lens-no-spot">
            <span>{lensViewWords.noSpot}</span>
          </div>
        ) : (
          <LensFrame plan={now} assessment={seen} {...frameSize(room, sidesOf(now))} />
        )}
      </div>
      <Controls />
      {drawnOnPage.value ? (
        <p class="hint lens-slow" role="status">
          {lensViewWords.drawnOnPage}
        </p>
      ) : null}
    </section>
  )
}

function sidesOf(now: NonNullable<typeof plan.value>): Room {
  const { sensorWidth, sensorHeight } = now.shoot.bag.camera
  const long = Math.max(sensorWidth, sensorHeight)
  const short = Math.min(sensorWidth, sensorHeight)
  return now.spot.shot.orientation === 'lying' ? { width: long, height: short } : { width: short, height: long }
}
