/** The words of the view through the lens. */
import type { LightSide } from '#core/light/direction.ts'
import type { Sky } from '#core/light/exposure.ts'

export const lensViewWords = {
  view: 'View through the lens',
  theSubject: 'the subject',
  theLandmark: 'The landmark',
  nothing: '–',
  fills: (name: string, wide: string, high: string) => `${name} fills ${wide} of the width and ${high} of the height.`,
  partHidden: (landmark: string, shown: string) =>
    `${shown} of the height of ${landmark} is visible; the ground hides the rest.`,
  allHidden: (landmark: string) => `${landmark} is hidden by the ground.`,
  drawnOnPage:
    'The picture is drawn more slowly than usual, because the part that draws it stopped twice. Close and reopen the window to start it again.',
  noSpot: 'No spot is open. Choose one on the shelf, or add one, to look through the lens.',
  onTop: (subject: string) =>
    `Camera and ${subject} are at the same place: there is nothing to frame. Drag one of them away in the close plan.`,
  inside: (subject: string) => `The camera is inside ${subject}. Drag it farther away in the close plan.`,
  fillCannotBe: (subject: string) =>
    `From here no focal length makes ${subject} that large in the frame. Move the camera farther away, or ask for a smaller size.`,
  aimCannotBe: (subject: string) =>
    `The camera cannot be turned so that ${subject} is there in the frame. Click “Centre” to bring it back.`,
  noLandmark: 'No landmark is chosen for this spot.',
  landmarkBehind: (landmark: string) => `${landmark} lies behind the camera.`,
  landmarkPartlyBehind: (landmark: string) => `A part of ${landmark} lies behind the camera.`,
  landmarkOutside: (landmark: string) => `${landmark} lies outside the frame.`,
  subjectOutside: (subject: string) => `${subject} lies outside the frame.`,
  frame: 'Frame: drag to move the composition',
  keys: 'Arrow keys move the composition by 1 % of the frame, with Shift by 5 %; 0 centres the subject.',
  lying: 'Landscape',
  upright: 'Portrait',
  held: 'How the camera is held',
  thirds: 'Thirds',
  crop: 'Crop',
  wholeFrame: 'Whole frame',
  centre: 'Centre',
  aim: 'Aim',
  bearing: 'Bearing',
  pitch: 'Tilt',
  degree: '°',
  noSuchAim: (subject: string) => `That would put ${subject} out of frame, so the camera was not turned.`,
  cut: (amount: string) => `cut ${amount}`,
  sunOut: (angle: string) => `sun ${angle} outside the frame`,
  moonOut: (angle: string) => `moon ${angle} outside the frame`,
  light: {
    from: {
      front: 'from the front',
      side: 'from the side',
      behind: 'from behind the subject',
      above: 'from above',
    } satisfies Record<LightSide, string>,
    handed: {
      front: (hand: string) => `from the front ${hand}`,
      side: (hand: string) => `from the ${hand}`,
      behind: (hand: string) => `from behind on the ${hand}`,
      above: () => 'from above',
    } satisfies Record<LightSide, (hand: string) => string>,
    hands: { left: 'left', right: 'right' },
    sun: (side: string, angle: string) => `Sun ${side}, ${angle} off the camera axis.`,
    straight: (side: string) => `Sun ${side}.`,
    lit: (subject: string, share: string) => `${subject}: ${share} of the sides in view lit.`,
    soft: {
      clear: '',
      hazy: '',
      'cloudy-bright': 'Bright cloud: soft light without shadows.',
      overcast: 'Overcast: soft light without shadows.',
      'open-shade': 'Open shade: soft light from the sky alone.',
    } satisfies Record<Sky, string>,
    heldOff: (subject: string) => `Hills keep the sun off ${subject}.`,
    down: (angle: string) => `The sun is down, ${angle} below the horizon.`,
    sunIn: 'The sun is in the frame.',
    moonIn: (lit: string) => `The moon is in the frame, ${lit} lit.`,
  },
  moveComposition: 'Move the composition',
  centreSubject: 'Centre the subject',
  turnCamera: 'Turn the camera',
  changeAim: 'Change the aim',
} as const
