/** The scan's panel, in the place of the answers: what may be stood on, what is wished, what was found. */
import { GroundPart } from './ground-part.tsx'
import { RunPart } from './run-part.tsx'
import { WishesPart } from './wishes-part.tsx'
import '#renderer/style/scan.css'

export function ScanPanel() {
  return (
    <>
      <GroundPart />
      <WishesPart />
      <RunPart />
    </>
  )
}
