/** Cameras for tests: a full frame level with the sea, which a test turns, tilts and puts elsewhere. */
import { type View, makeView } from '#core/frame/projection.ts'
import { localFrame } from '#core/geo/local-frame.ts'

/** Looking north from the sea at the equator, 36 mm by 24, without refraction: right is east, depth is north. */
export function viewWith(parts: Partial<Parameters<typeof makeView>[0]> = {}): View {
  return makeView({
    frame: localFrame({ lat: 0, lon: 0 }, 0),
    bearing: 0,
    pitch: 0,
    imageDistance: 50,
    frameWidth: 36,
    frameHeight: 24,
    refraction: 0,
    ...parts,
  })
}
