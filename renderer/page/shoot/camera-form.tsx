/** Which camera? The sensor by format; under a fold its own size, what counts as sharp, the shutter, and how the air bends the light. */
import { useLayoutEffect, useRef, useState } from 'preact/hooks'
import { type Camera, SENSOR_FORMATS, circleOfConfusion } from '#core/optics/sensor.ts'
import { NAME_MOST, RECORD_LIMITS } from '#core/record/record-limits.ts'
import type { Shoot } from '#core/record/shoot.ts'
import { Choice } from '#renderer/part/choice.tsx'
import { FigureField } from '#renderer/part/figure-field.tsx'
import { millimetres, rounded } from '#renderer/text/figure.ts'
import { HeldFold, Question } from '#renderer/part/question.tsx'
import { TextField } from '#renderer/part/text-field.tsx'
import { changeShoot } from '#renderer/state/library/history.ts'
import { shoot as openShoot } from '#renderer/state/library/library.ts'
import { formWords } from '#renderer/words/en-forms.ts'
import { words } from '#renderer/words/en.ts'
import { formatOf } from './typed-changes.ts'

const SIDES = { least: 0.5, most: 1_000 } as const
const DIVISORS = { least: 100, most: 10_000 } as const
/** Parts of a second, and seconds. */
const FASTEST = { least: 1, most: 1_000_000 } as const
const SLOWEST = { least: 0.001, most: 100_000 } as const

export function CameraForm({ shoot }: { shoot: Shoot }) {
  const say = words.shoot
  const { camera } = shoot.bag
  const [open, setOpen] = useState(false)
  // Who wants a size of their own goes on to type its longer side.
  const [ownSize, setOwnSize] = useState(false)
  const fineRef = useRef<HTMLDivElement>(null)
  useLayoutEffect(() => {
    if (!open || !ownSize) return
    fineRef.current?.querySelector('input')?.focus()
    setOwnSize(false)
  }, [open, ownSize])
  return (
    <Question title={say.camera}>
      <div class="field-row">
        <TextField label={say.cameraName} value={camera.name} most={NAME_MOST} onTake={(name) => change({ name })} />
        <SensorChoice
          camera={camera}
          onOwn={() => {
            setOpen(true)
            setOwnSize(true)
          }}
        />
      </div>
      <HeldFold title={formWords.camera.fine} open={open} onOpen={setOpen}>
        <div ref={fineRef}>
          <FinePoints shoot={shoot} />
        </div>
      </HeldFold>
    </Question>
  )
}

/** Changes the camera as it is by now. */
function change(part: Partial<Camera>): void {
  const now = openShoot.peek()
  if (now === null) return
  const camera = { ...now.bag.camera, ...part }
  void changeShoot(words.shoot.edit.camera, { ...now, bag: { ...now.bag, camera } })
}

/** By format; `onOwn` leads to the fields for a size of one's own, which is told here once it is one. */
function SensorChoice({ camera, onOwn }: { camera: Camera; onOwn: () => void }) {
  const say = words.shoot
  const usual = formatOf(camera)
  const { sensorWidth, sensorHeight } = camera
  const size = `${rounded(sensorWidth, 3)} × ${rounded(sensorHeight, 3)} mm`
  const own = ['own', usual === undefined ? formWords.camera.ownSize(say.custom, size) : `${say.custom}…`] as const
  const choose = (id: string): void => {
    const format = SENSOR_FORMATS.find((candidate) => candidate.id === id)
    if (format === undefined) onOwn()
    else change({ sensorWidth: format.width, sensorHeight: format.height })
  }
  return (
    <Choice
      label={say.format}
      value={usual?.id ?? 'own'}
      options={[...SENSOR_FORMATS.map((format) => [format.id, say.formats[format.id]] as const), own]}
      onChoose={choose}
    />
  )
}

/** What is set once, if ever: the sensor's own sides, what counts as sharp, how the air bends the light, the shutter's ends. */
function FinePoints({ shoot }: { shoot: Shoot }) {
  const say = words.shoot
  const { camera } = shoot.bag
  return (
    <>
      <div class="field-row">
        <FigureField
          label={say.longSide}
          unit="mm"
          value={camera.sensorWidth}
          limits={SIDES}
          refuse={(side) => (side < camera.sensorHeight ? say.field.longSideShorter : null)}
          judged={{ by: String(camera.sensorHeight), field: `${shoot.id} long side` }}
          onTake={(sensorWidth) => change({ sensorWidth })}
        />
        <FigureField
          label={say.shortSide}
          unit="mm"
          value={camera.sensorHeight}
          limits={SIDES}
          refuse={(side) => (side > camera.sensorWidth ? say.field.shortSideLonger : null)}
          judged={{ by: String(camera.sensorWidth), field: `${shoot.id} short side` }}
          onTake={(sensorHeight) => change({ sensorHeight })}
        />
        <FigureField
          label={formWords.camera.confusion}
          decimals={0}
          value={camera.confusionDivisor}
          limits={DIVISORS}
          hint={formWords.camera.confusionHint(millimetres(circleOfConfusion(camera)))}
          onTake={(confusionDivisor) => change({ confusionDivisor })}
        />
      </div>
      <div class="field-row">
        <FigureField
          label={formWords.camera.fastestShutter}
          unit="s"
          decimals={0}
          strip={/^\s*1\s*[/÷]/u}
          value={1 / camera.fastestShutter}
          limits={FASTEST}
          refuse={(part) => (1 / part < camera.slowestShutter ? null : say.shutterOrder)}
          judged={{ by: String(camera.slowestShutter), field: `${shoot.id} fastest` }}
          onTake={(part) => change({ fastestShutter: 1 / part })}
        />
        <FigureField
          label={formWords.camera.slowestShutter}
          unit="s"
          decimals={1}
          value={camera.slowestShutter}
          limits={SLOWEST}
          refuse={(seconds) => (seconds > camera.fastestShutter ? null : say.shutterOrder)}
          judged={{ by: String(camera.fastestShutter), field: `${shoot.id} slowest` }}
          onTake={(slowestShutter) => change({ slowestShutter })}
        />
      </div>
      <div class="field-row">
        <FigureField
          label={formWords.camera.refraction}
          decimals={3}
          value={shoot.refraction}
          limits={RECORD_LIMITS.refraction}
          hint={formWords.camera.refractionHint}
          onTake={(refraction) => void changeShoot(say.edit.refraction, { ...shoot, refraction })}
        />
      </div>
    </>
  )
}
