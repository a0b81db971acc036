/** The day strip along the foot of the board: the civil day at the place, its light, its windows, and the chosen instant. */
import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks'
import { stripWords } from '#renderer/words/en-day-strip.ts'
import { DayBlock } from './day-block.tsx'
import { followTimeDrag } from './hold-time.ts'
import { HourMarks } from './hours.tsx'
import { MoonBar } from './moon-bar.tsx'
import { SkyBand } from './sky-band.tsx'
import { hasSpot } from './strip-signals.ts'
import { TimeLine } from './time-line.tsx'
import { type BarMeasure, WindowBars } from './window-bars.tsx'
import './day-strip.css'

export function DayStrip() {
  return (
    <section class="day-strip" aria-label={stripWords.title}>
      {hasSpot.value ? (
        <>
          <DayBlock />
          <Chart />
        </>
      ) : (
        <p class="strip-empty">{stripWords.noSpot}</p>
      )}
    </section>
  )
}

function Chart() {
  const chart = useRef<HTMLDivElement>(null)
  const line = useRef<HTMLDivElement>(null)
  const [measure, setMeasure] = useState<BarMeasure>({ width: 0, type: 12 })
  useLayoutEffect(() => {
    const element = chart.current
    if (element === null) return undefined
    const look = (): void =>
      setMeasure({ width: element.clientWidth, type: Number.parseFloat(getComputedStyle(element).fontSize) })
    look()
    const watch = new ResizeObserver(look)
    watch.observe(element)
    return () => watch.disconnect()
  }, [])
  useEffect(
    () =>
      chart.current === null
        ? undefined
        : followTimeDrag(chart.current, () => line.current?.focus({ preventScroll: true })),
    [],
  )
  return (
    <div class="day-chart" ref={chart}>
      <SkyBand />
      <WindowBars {...measure} />
      <MoonBar />
      <HourMarks />
      <TimeLine line={line} />
    </div>
  )
}
