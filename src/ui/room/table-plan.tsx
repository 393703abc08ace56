import type { TableShape, Vessel } from '../../arrangement/index.ts'
import { PLATE_mm, platesOf } from './seats.ts'

interface Props {
  table: TableShape
  vessel: Vessel
  /** Widest extent of the plants, mm; null if there are none. */
  spread: number | null
  linen: string
}

/** The table from above, to scale: the vessel in its middle, how far the plants reach, a plate for each guest. */
export const TablePlan = ({ table, vessel, spread, linen }: Props) => {
  const [w, h] = table.shape === 'round' ? [table.diameter, table.diameter] : [table.length, table.width]
  const pad = 0.04 * Math.max(w, h)
  const line = Math.max(w, h) / 260
  const plates = platesOf(table)
  return (
    <svg
      className="table-plan"
      viewBox={`${-w / 2 - pad} ${-h / 2 - pad} ${w + 2 * pad} ${h + 2 * pad}`}
      strokeWidth={line}
      role="img"
      aria-label={`The table from above with ${plates.length} plates and the vessel in its middle, to scale`}
    >
      {table.shape === 'round' ? (
        <circle r={w / 2} fill={linen} stroke="var(--ink)" />
      ) : (
        <rect x={-w / 2} y={-h / 2} width={w} height={h} fill={linen} stroke="var(--ink)" />
      )}
      <g fill="none" stroke="var(--line)">
        {plates.map(([x, y], i) => (
          <g key={i} transform={`translate(${x} ${-y})`}>
            <circle r={PLATE_mm / 2} />
            <circle r={PLATE_mm * 0.34} strokeWidth={line / 2} />
          </g>
        ))}
      </g>
      {spread === null ? null : (
        <circle
          r={spread / 2}
          fill="none"
          stroke="var(--accent)"
          strokeWidth={1.4 * line}
          strokeDasharray={`${6 * line} ${4 * line}`}
        />
      )}
      {vessel.plan === 'rectangular' ? (
        <rect
          x={-vessel.width / 2}
          y={-vessel.depth / 2}
          width={vessel.width}
          height={vessel.depth}
          fill={vessel.colour}
          stroke="var(--ink)"
        />
      ) : (
        <ellipse rx={vessel.width / 2} ry={vessel.depth / 2} fill={vessel.colour} stroke="var(--ink)" />
      )}
    </svg>
  )
}
