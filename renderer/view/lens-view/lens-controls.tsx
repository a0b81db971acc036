/** Beside the frame: how the camera is held, and the guides. */
import type { Plan } from '#core/plan/plan.ts'
import { Choice } from '#renderer/part/choice.tsx'
import { Icon, type IconName } from '#renderer/part/icon.tsx'
import { Segment } from '#renderer/part/segment.tsx'
import { type PicturePlace, picturePlace, putPicture } from '#renderer/state/session/picture-place.ts'
import { picturePlaceWords as say } from '#renderer/words/en-picture-place.ts'
import { lensViewWords } from '#renderer/words/en-lens-view.ts'
import { centre, turnCamera } from './compose.ts'
import { cropGuide, thirds, showThirds, showCrop } from './guide-choice.ts'
import { guideCropName } from './guides.tsx'

export function LensControls({ plan }: { readonly plan: Plan }) {
  return (
    <div class="lens-controls">
      <Segment
        label={lensViewWords.held}
        value={plan.spot.shot.orientation}
        options={[
          ['lying', <Icon key="lying" name="landscape" />, lensViewWords.lying],
          ['upright', <Icon key="upright" name="portrait" />, lensViewWords.upright],
        ]}
        onChoose={turnCamera}
      />
      <IconButton
        icon="thirds"
        name={lensViewWords.thirds}
        on={thirds.value}
        onPress={() => showThirds(!thirds.value)}
      />
      <CropChoice plan={plan} />
      <IconButton icon="centre" name={lensViewWords.centre} onPress={centre} />
      <span class="lens-places">
        <PlaceButton icon="trade" place="traded" name={say.trade} />
        <PlaceButton icon="whole" place="window" name={say.whole} />
      </span>
    </div>
  )
}

interface IconButtonProps {
  readonly icon: IconName
  readonly name: string
  /** Whether it is switched on; left out for what is done at once. */
  readonly on?: boolean
  readonly onPress: () => unknown
}

function IconButton({ icon, name, on, onPress }: IconButtonProps) {
  return (
    <button
      type="button"
      class="button button-icon"
      aria-label={name}
      title={name}
      aria-pressed={on}
      onClick={() => void onPress()}
    >
      <Icon name={icon} />
    </button>
  )
}

function PlaceButton({ icon, place, name }: Pick<IconButtonProps, 'icon' | 'name'> & { readonly place: PicturePlace }) {
  const on = picturePlace.value === place
  return <IconButton icon={icon} name={on ? say.back : name} on={on} onPress={() => putPicture(place)} />
}

function CropChoice({ plan }: { readonly plan: Plan }) {
  const { crops } = plan.shoot
  const chosen = cropGuide.value
  const options = crops.map((crop) => [guideCropName(crop), guideCropName(crop)] as const)
  const known = chosen !== null && crops.some((crop) => guideCropName(crop) === guideCropName(chosen))
  return (
    <Choice
      label={lensViewWords.crop}
      hideLabel
      value={known ? guideCropName(chosen) : ''}
      options={[['', lensViewWords.wholeFrame], ...options]}
      onChoose={(name) => {
        showCrop(crops.find((crop) => guideCropName(crop) === name) ?? null)
      }}
    />
  )
}
