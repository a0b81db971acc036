/** What the demands of a scan are called: by the subject and the landmark that they are about. */
import { landmarkOf } from '#core/plan/plan.ts'
import type { ScanWishKind } from '#core/record/scan-wishes.ts'
import type { ScanRequest } from '#core/scan/scan-request.ts'
import { landmarkName, subjectName } from '#renderer/text/names.ts'
import { scanWishWords } from '#renderer/words/en-scan-wishes.ts'

export type DemandNames = Readonly<Record<ScanWishKind, string>>

export function demandNames({ shoot, spot }: Pick<ScanRequest, 'shoot' | 'spot'>): DemandNames {
  return scanWishWords.names(subjectName(shoot.subject), landmarkName(landmarkOf(shoot, spot)))
}
