/** Every trouble of a scan has a sentence that names its ground and what to do. */
import { expect, test } from 'vitest'
import { destination } from '#core/geo/geodesic.ts'
import { NO_WISHES } from '#core/light/light-wish.ts'
import { USUAL_SCAN_WISHES } from '#core/record/scan-wishes.ts'
import type { Shoot } from '#core/record/shoot.ts'
import type { StoppingGround } from '#core/record/stopping-ground.ts'
import { type ScanTrouble, scanTroubles } from '#core/scan/scan-troubles.ts'
import { type ScanRequest, USUAL_STEPS } from '#core/scan/scan-request.ts'
import { DEMAND_START } from '#renderer/panel/scan/demand-start.ts'
import { type TroubleContext, troubleText } from '#renderer/panel/scan/trouble-text.ts'
import { scanWishWords } from '#renderer/words/en-scan-wishes.ts'
import { examplePlan } from '#test/help/plans.ts'

const AT = { lat: -41.2, lon: 12.4 }

function line(metres: number, name = 'Shore track'): StoppingGround {
  return { id: 'one', name, form: 'line', points: [AT, destination(AT, 90, metres)], turn: 'along' }
}

function asked(part: Partial<Shoot>, landmark?: null): ScanRequest {
  const { shoot, spot } = examplePlan(landmark === null ? { landmark } : {})
  const wished: Shoot = { ...shoot, stoppingGround: [line(200)], ...part }
  return { shoot: wished, spot, terrain: null, pins: [], zone: 'UTC', parkings: [], steps: USUAL_STEPS }
}

function sentences(request: ScanRequest): string[] {
  const context: TroubleContext = {
    shoot: request.shoot,
    landmark: request.shoot.landmarks[0] ?? null,
    names: scanWishWords.names('Bicycle', 'Bridge'),
    units: 'metric',
  }
  return scanTroubles(request).map((trouble: ScanTrouble) => troubleText(trouble, context))
}

const { landmarkFill, landmarkWhole } = USUAL_SCAN_WISHES
const bow = [0, 1, 0, 1].map((east, index) => destination(destination(AT, 90, east * 50), 0, index < 2 ? 0 : 50))

test.each<[string, ScanRequest, RegExp]>([
  ['no ground', asked({ stoppingGround: [] }), /No place to stop is drawn/u],
  ['a dot', asked({ stoppingGround: [line(0.2)] }), /“Shore track” is a line of 0.2.*too short/u],
  ['a dot without a name', asked({ stoppingGround: [line(0.2, ' ')] }), /^Place to stop 1 is a line of/u],
  ['two corners', asked({ stoppingGround: [{ ...line(90), form: 'area' }] }), /“Shore track” has 2 corners/u],
  [
    'a bow',
    asked({ stoppingGround: [{ ...line(90), form: 'area', points: bow }] }),
    /“Shore track”: its outline crosses/u,
  ],
  ['an empty bag', asked({ bag: { ...examplePlan().shoot.bag, lenses: [] } }), /No lens is in the bag/u],
  [
    'no landmark',
    asked({}, null),
    /has no landmark, and “Bridge fills”, “Bridge whole” and “Bridge not hidden” need one/u,
  ],
  [
    'too much for one frame',
    asked({
      scanWishes: {
        ...USUAL_SCAN_WISHES,
        landmarkWhole,
        landmarkFill: landmarkFill && { ...landmarkFill, must: true, least: 1.2, most: 2 },
      },
    }),
    /“Bridge fills” and “Bridge whole” together need 120.*of the frame/u,
  ],
  [
    'a band upside down',
    asked({ scanWishes: { ...USUAL_SCAN_WISHES, lensHeight: { least: 2, most: 1 } } }),
    /“Lens above the ground”: the lower limit is above the upper/u,
  ],
  [
    'lights that exclude each other',
    asked({ light: { ...NO_WISHES, subject: 'lit', soft: 'evening' } }),
    /“Cargo bicycle lit” and “blue hour, evening”/u,
  ],
  [
    'days the wrong way round',
    asked({ scanWishes: { ...USUAL_SCAN_WISHES, days: { from: '2027-06-14', until: '2027-06-01' } } }),
    /14 June 2027.*comes after/u,
  ],
  [
    'no parking point',
    asked({ scanWishes: { ...USUAL_SCAN_WISHES, parking: DEMAND_START.parking } }),
    /no spot of this shoot has a parking point/u,
  ],
  [
    'a hundred kilometres',
    asked({ stoppingGround: [line(400_000)] }),
    /40,001 positions in this detail make .* million pictures/u,
  ],
])('%s', (_, request, sentence) => {
  expect(sentences(request).join('\n')).toMatch(sentence)
})
