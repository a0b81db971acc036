/** The corners and edges of a chosen landmark, each taken hold of by itself. */
import { About, FocusRing, Grab } from './marks.tsx'
import type { LandmarkDrawing } from './plan-drawing.ts'

interface CornersProps {
  readonly landmark: LandmarkDrawing
  readonly cornerName: (index: number, count: number) => string
  readonly edgeName: (index: number) => string
}

export function CornerMarks({ landmark, cornerName, edgeName }: CornersProps) {
  return (
    <g>
      {landmark.edges.map(({ index, at }) => (
        <Grab key={`edge ${index}`} grip={{ on: 'edge', index }} name={edgeName(index)} pressed={false}>
          <About at={at}>
            <circle class="hit" r={10} />
            <circle class="edge-handle" r={3.2} />
            <FocusRing radius={8} />
          </About>
        </Grab>
      ))}
      {landmark.corners.map((at, index) => (
        <Grab
          key={`corner ${index}`}
          grip={{ on: 'corner', index }}
          name={cornerName(index, landmark.corners.length)}
          pressed={false}
        >
          <About at={at}>
            <circle class="hit" r={11} />
            <rect class="corner-handle" x={-4} y={-4} width={8} height={8} />
            <FocusRing radius={9} />
          </About>
        </Grab>
      ))}
    </g>
  )
}
