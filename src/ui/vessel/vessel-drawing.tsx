import type { Vessel } from '../../arrangement/index.ts'
import { vesselHalfWidth } from '../../geometry/index.ts'

/** Outline of a vessel from the front, to scale: `size` CSS px for `span` mm. Line drawing, as in the sheet. */
export const VesselDrawing = ({ vessel, size, span }: { vessel: Vessel; size: number; span: number }) => {
  const steps = 24
  const right = Array.from(
    { length: steps + 1 },
    (_, i) => [vesselHalfWidth(vessel, i / steps), (i / steps) * vessel.height] as const,
  )
  const points = [...right.map(([x, h]) => [x, -h]), ...[...right].reverse().map(([x, h]) => [-x, -h])]
  const half = span / 2
  return (
    <svg width={size} height={size} viewBox={`${-half} ${-span * 0.96} ${span} ${span}`} aria-hidden="true">
      <path
        d={`M${points.map(([x, y]) => `${x?.toFixed(1)} ${y?.toFixed(1)}`).join('L')}Z`}
        fill={vessel.colour}
        stroke="currentColor"
        strokeWidth={1}
        vectorEffect="non-scaling-stroke"
      />
      <line
        x1={-half}
        x2={half}
        y1={0}
        y2={0}
        stroke="currentColor"
        strokeWidth={1}
        vectorEffect="non-scaling-stroke"
      />
    </svg>
  )
}
