/** The column of answers: their lines, and as many of them open as there is room for. */
import type { ComponentChildren } from 'preact'
import { useLayoutEffect, useRef } from 'preact/hooks'
import { tellRoomForAnswers } from '#renderer/state/session/open-answers.ts'

/** CSS pixels that an open answer is given at the least where several are open. */
const OPEN_HEIGHT = 230

interface ColumnProps {
  readonly label: string
  readonly children: ComponentChildren
}

export function AnswerColumn({ label, children }: ColumnProps) {
  const column = useRef<HTMLDivElement>(null)
  useLayoutEffect(() => {
    const element = column.current
    if (element === null) return undefined
    const watch = new ResizeObserver(() => {
      const lines = [...element.querySelectorAll('.answer > h2')]
      const taken = lines.reduce((sum, line) => sum + line.clientHeight, 0)
      tellRoomForAnswers(Math.floor((element.clientHeight - taken) / OPEN_HEIGHT))
    })
    watch.observe(element)
    return () => watch.disconnect()
  }, [])
  return (
    <div class="answers glance" ref={column} role="group" aria-label={label}>
      {children}
    </div>
  )
}
