import { digitsFor, formatNumber } from './format.ts'
import { alongScale, placeInBand, type Range } from './gauge-scale.ts'
import './gauge.css'

export interface GaugeProps {
  /** null while it is not known: the scale keeps its place, the needle is left out. */
  value: number | null
  scale: Range
  band: Range | null
  /** Where the value would go: an open needle in the accent. */
  predicted?: number | null
  /** Shows the limits in figures. */
  limits?: boolean
  /** Words at the ends in place of figures, for a scale without a good end: `quiet`, `vivid`. */
  ends?: readonly [string, string]
  width?: number
}

const Needle = ({ x, y, open, ghost = false }: { x: number; y: number; open: boolean; ghost?: boolean }) => (
  <path
    className={`needle${open ? ' open' : ''}${ghost ? ' ghost' : ''}`}
    d={`M${x.toFixed(1)} ${y - 1.5}l-4 -7.2h8z`}
    vectorEffect="non-scaling-stroke"
  />
)

/**
 * A gauge drawn as a toleranced dimension: a hairline over the range, a heavy stroke between two limits for what is
 * wanted, a needle for the value, filled inside and open outside. Decoration: its words stand beside it.
 */
export const Gauge = ({ value, scale, band, predicted, limits = false, ends, width = 276 }: GaugeProps) => {
  const y = 10.5
  const at = (v: number): number => 4 + alongScale(v, scale) * (width - 8)
  const digits = digitsFor(scale)
  const from = band ? at(band[0]) : 0
  const to = band ? at(band[1]) : 0
  const height = limits || ends ? 31 : 17
  return (
    <svg className="gauge" viewBox={`0 0 ${width} ${height}`} width={width} height={height} aria-hidden="true">
      <path className="scale" d={`M4 ${y}H${width - 4}M4.5 ${y - 3}v6M${width - 4.5} ${y - 3}v6`} />
      {band && (
        <>
          <rect className="band" x={from} y={y - 1.5} width={Math.max(1, to - from)} height={3} />
          <path className="limit" d={`M${from} ${y - 5}v10M${to} ${y - 5}v10`} />
        </>
      )}
      {limits && band && <Limits from={from} to={to} y={y + 17} width={width} band={band} digits={digits} />}
      {ends && (
        <>
          <text x={4} y={y + 17}>
            {ends[0]}
          </text>
          <text x={width - 4} y={y + 17} textAnchor="end">
            {ends[1]}
          </text>
        </>
      )}
      {value !== null && predicted != null && Math.abs(at(predicted) - at(value)) > 3 && (
        <>
          <path className="move" d={`M${at(value)} ${y - 6.5}H${at(predicted)}`} />
          <Needle x={at(predicted)} y={y} open ghost />
        </>
      )}
      {value !== null && <Needle x={at(value)} y={y} open={placeInBand(value, band) !== 'inside' && band !== null} />}
    </svg>
  )
}

interface LimitsProps {
  from: number
  to: number
  y: number
  width: number
  band: Range
  digits: number
}
/** The two limits in figures, kept apart and inside the gauge. */
const Limits = ({ from, to, y, width, band, digits }: LimitsProps) => {
  const left = Math.min(Math.max(from, 4), width - 50)
  const right = Math.min(Math.max(to, left + 44), width - 4)
  return (
    <>
      <text x={left} y={y} textAnchor={from < 16 ? 'start' : 'middle'}>
        {formatNumber(band[0], digits)}
      </text>
      <text x={right} y={y} textAnchor={to > width - 16 ? 'end' : 'middle'}>
        {formatNumber(band[1], digits)}
      </text>
    </>
  )
}

/** The same gauge standing, 46 px high, for the index on a phone. */
export const UprightGauge = ({ value, scale, band }: Pick<GaugeProps, 'value' | 'scale' | 'band'>) => {
  const at = (v: number): number => 39 - alongScale(v, scale) * 32
  const x = 18
  return (
    <svg className="gauge" viewBox="0 0 30 46" width={30} height={46} aria-hidden="true">
      <path className="scale" d={`M${x} 7V39M${x - 3} 7h6M${x - 3} 39h6`} />
      {band && (
        <>
          <rect
            className="band"
            x={x - 1.5}
            y={at(band[1])}
            width={3}
            height={Math.max(1, at(band[0]) - at(band[1]))}
          />
          <path className="limit" d={`M${x - 5} ${at(band[0])}h10M${x - 5} ${at(band[1])}h10`} />
        </>
      )}
      {value !== null && (
        <path
          className={`needle${band !== null && placeInBand(value, band) !== 'inside' ? ' open' : ''}`}
          d={`M${x - 2} ${at(value).toFixed(1)}l-7.5 -4.2v8.4z`}
        />
      )}
    </svg>
  )
}
