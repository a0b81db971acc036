/** The scan's panel, in the place of the answers: what may be stood on, what is wished, what was found. */
import { useEffect } from 'preact/hooks'
import { DrawnGroundPart } from './drawn-part.tsx'
import { RunPart } from './run-part.tsx'
import { followScanGround } from './scan-ground.ts'
import { WishesPart } from './wishes-part.tsx'
import './scan.css'

export function ScanPanel() {
  useEffect(followScanGround, [])
  return (
    <>
      <DrawnGroundPart />
      <WishesPart />
      <RunPart />
    </>
  )
}
