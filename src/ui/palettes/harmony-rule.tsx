import type { ReadingResult } from '../../readings/index.ts'
import { formatNumber } from '../parts/index.ts'

/** The published value is high for quiet pairs; quiet stands at the left, as in the readings. 0–1. */
const along = (value: number, [least, most]: readonly [number, number]): number =>
  1 - Math.max(0, Math.min(1, (value - least) / (most - least)))

const needle = (t: number): string => `M${(t * 276 + 6).toFixed(1)} 14l-5-8.6h10z`

/** From quiet to vivid: an open marker by daylight, a filled one in the light of the room. */
export const HarmonyRule = ({ reading, inLight }: { reading: ReadingResult | undefined; inLight: string }) => {
  const main = reading?.because?.main
  if (!reading || main?.key !== 'harmonyFlowers')
    return <p className="dim">{reading ? reading.notApplicable || 'Nothing to weigh yet.' : 'One moment.'}</p>
  const day = reading.values.harmonyDaylight
  const byDay = typeof day === 'number' ? day : main.value
  const words = `Flowers together, from quiet to vivid: ${formatNumber(main.value, 2, true)} ${inLight}, ${formatNumber(byDay, 2, true)} by daylight`
  const at = along(main.value, main.scale)
  return (
    <div className="harmony">
      <svg viewBox="0 0 288 22" role="img" aria-label={words} preserveAspectRatio="none">
        <path d="M6 16.5H282" stroke="var(--line)" vectorEffect="non-scaling-stroke" />
        {Array.from({ length: 21 }, (_, i) => (
          <path
            key={i}
            d={`M${6 + i * 13.8} ${i % 5 === 0 ? 12.5 : 14.5}V${i % 5 === 0 ? 20.5 : 16.5}`}
            stroke="var(--line)"
            vectorEffect="non-scaling-stroke"
          />
        ))}
        <path className="by-day" d={needle(along(byDay, main.scale))} vectorEffect="non-scaling-stroke" />
        <path className="in-light" d={needle(at)} vectorEffect="non-scaling-stroke" />
      </svg>
      <div className="harmony-words" aria-hidden="true">
        <span>quiet</span>
        <b style={{ left: `${(2 + 96 * Math.min(0.82, Math.max(0.18, at))).toFixed(1)}%` }}>
          {formatNumber(main.value, 2, true)}
        </b>
        <span>vivid</span>
      </div>
    </div>
  )
}
