/** What a scan begun now would be asked: the saved shoot and spot on the board, however something is dragged or tried out. */
import { computed } from '@preact/signals'
import { parkingsOf } from '#core/record/parkings.ts'
import type { ScanRequest } from '#core/scan/scan-request.ts'
import { scanCost } from '#core/scan/scan-cost.ts'
import { scanTroubles } from '#core/scan/scan-troubles.ts'
import { groundVersion } from '#renderer/host/ground-windows.ts'
import { chooseDrawn, stopDrawing } from '#renderer/state/session/drawn-ground.ts'
import { homeSpot, shoot, spots } from '#renderer/state/library/library.ts'
import { pinPlaces, pinsAtHand } from '#renderer/state/plan/pin-heights.ts'
import { scanShown } from '#renderer/state/session/scan-shown.ts'
import { zone } from '#renderer/state/plan/zone.ts'
import { stepsNow } from './fineness.ts'
import { scanGround } from './scan-ground.ts'
import { scanPool } from './scan-workers.ts'
import { startScan } from './scan-run.ts'
import { type ScanChange, changedSince } from './scan-stale.ts'

/** Null without a spot to set out from. */
export const scanNow = computed<ScanRequest | null>(() => {
  const home = shoot.value
  const spot = homeSpot.value
  if (home === null || spot === null) return null
  const { grid } = scanGround.value
  const pins = pinsAtHand(pinPlaces(home, spot))
  return {
    shoot: home,
    spot,
    terrain: grid,
    pins,
    zone: zone.value,
    parkings: parkingsOf(spots.value),
    steps: stepsNow(),
  }
})

export const costNow = computed(() => (scanNow.value === null ? null : scanCost(scanNow.value)))
export const troublesNow = computed(() => {
  const [request, cost] = [scanNow.value, costNow.value]
  return request === null || cost === null ? [] : scanTroubles(request, cost)
})

/** By which version of the elevations the last scan went. */
let scannedVersion = groundVersion.peek()

/** What has changed since the last scan was asked; the spot it set out from counts as it is now, wherever the board has gone since. */
export const scanChanges = computed<readonly ScanChange[]>(() => {
  const asked = scanShown.value?.request
  const now = scanNow.value
  if (asked === undefined || now === null) return []
  const spot = spots.value.find(({ id }) => id === asked.spot.id) ?? asked.spot
  const changes = changedSince(asked, { ...now, spot })
  return groundVersion.value === scannedVersion || changes.includes('elevations') ? changes : [...changes, 'elevations']
})

/** Begins a scan of what is drawn and wished now. */
export function scanAgain(): void {
  const request = scanNow.peek()
  const cost = costNow.peek()
  if (request === null || cost === null || troublesNow.peek().some(({ refuses }) => refuses)) return
  // What is found along a line shall not be hidden by its own handles.
  stopDrawing()
  chooseDrawn(null)
  scannedVersion = groundVersion.peek()
  startScan(request, cost, {
    pool: scanPool(request.terrain),
    now: () => performance.now(),
    newId: () => crypto.randomUUID(),
    later(run, milliseconds) {
      const timer = setTimeout(run, milliseconds)
      return () => clearTimeout(timer)
    },
  })
}
