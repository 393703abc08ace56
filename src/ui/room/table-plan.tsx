import { ellipsePoints, type Mark, roomMarks, type Scene } from '../../drawing/index.ts'
import type { Resolved } from '../../geometry/index.ts'

interface Props {
  resolved: Resolved
  scene: Scene
  /** Widest extent of the plants, mm; null if there are none. */
  spread: number | null
  /** A colour as it is seen in the light of the room. */
  lit: (hex: string) => string
}

const ABOVE = { turn: 0, pitch: 90 } as const

const path = (mark: Mark): string => {
  const points = mark.kind === 'ellipse' ? ellipsePoints(mark) : mark.points
  return `M${points.map(([x, y]) => `${x.toFixed(1)} ${(-y).toFixed(1)}`).join('L')}`
}

/** The table from above, to scale: what stands on it, the vessel in its middle and how far the plants reach. */
export const TablePlan = ({ resolved, scene, spread, lit }: Props) => {
  const { table, copies } = scene
  const [w, h] = table.shape === 'round' ? [table.diameter, table.diameter] : [table.length, table.width]
  const { vessel } = resolved
  const pad = 0.03 * Math.max(w, h)
  const line = Math.max(w, h) / 520
  const marks = roomMarks(resolved, scene, ABOVE, { step_mm: 5 * line })
  const plates = scene.things.filter(({ kind }) => kind === 'dinner-plate' || kind === 'side-plate').length
  return (
    <svg
      className="table-plan"
      viewBox={`${-w / 2 - pad} ${-h / 2 - pad} ${w + 2 * pad} ${h + 2 * pad}`}
      role="img"
      aria-label={`The table from above with ${plates} plates and the vessel in its middle, to scale`}
    >
      {marks.map((mark, i) =>
        mark.kind === 'polygon' ? (
          <path key={i} d={`${path(mark)}Z`} fill={lit(mark.fill)} />
        ) : (
          <path key={i} d={path(mark)} fill="none" stroke={lit(mark.colour)} strokeWidth={mark.weight * line} />
        ),
      )}
      {[[0, 0], ...copies].map(([x, y], i) =>
        spread === null ? null : (
          <circle
            key={i}
            cx={x}
            cy={-y!}
            r={spread / 2}
            fill="none"
            stroke="var(--accent)"
            strokeWidth={1.8 * line}
            strokeDasharray={`${8 * line} ${5 * line}`}
          />
        ),
      )}
      {vessel.plan === 'rectangular' ? (
        <rect
          x={-vessel.width / 2}
          y={-vessel.depth / 2}
          width={vessel.width}
          height={vessel.depth}
          fill={lit(vessel.colour)}
          stroke="var(--ink)"
          strokeWidth={line}
        />
      ) : (
        <ellipse
          rx={vessel.width / 2}
          ry={vessel.depth / 2}
          fill={lit(vessel.colour)}
          stroke="var(--ink)"
          strokeWidth={line}
        />
      )}
    </svg>
  )
}
