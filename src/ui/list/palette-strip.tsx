import { useMemo } from 'react'
import { useStudio } from '../../state/index.ts'
import type { ListView } from './derived.ts'

/** Colours in use by the size of the heads that carry them. */
export const PaletteStrip = ({ view }: { view: ListView }) => {
  const name = useStudio((s) => s.document.palette.name)
  const lit = useStudio((s) => s.lit)
  const parts = useMemo(() => {
    const area = new Map<string, { area: number; plants: Set<string>; ids: string[] }>()
    for (const s of view.resolved.stems) {
      const part = area.get(s.colour) ?? { area: 0, plants: new Set<string>(), ids: [] }
      part.area += s.head_mm ** 2
      part.plants.add(s.plant.name.toLowerCase())
      part.ids.push(s.id)
      area.set(s.colour, part)
    }
    return [...area].sort((a, b) => b[1].area - a[1].area)
  }, [view])
  const total = parts.reduce((n, [, p]) => n + p.area, 0)
  if (total === 0) return null
  return (
    <section className="palette-strip" aria-label="Palette in use">
      <div className="head-line">
        <h2>Palette</h2>
        <span className="dim">
          {name.trim() === '' ? null : (
            <>
              <i>{name}</i>,{' '}
            </>
          )}
          by size of heads
        </span>
      </div>
      <div className="strip" aria-hidden="true">
        {parts.map(([hex, p]) => (
          <span
            key={hex}
            style={{
              background: hex,
              flexGrow: p.area,
              opacity: lit.length && !p.ids.some((i) => lit.includes(i)) ? 0.45 : 1,
            }}
          />
        ))}
      </div>
      <ul className="strip-words">
        {parts.map(([hex, p]) => (
          <li key={hex}>
            <span className="dot" style={{ background: hex }} aria-hidden="true" />
            {[...p.plants].slice(0, 2).join(', ')} <span className="dim">{Math.round((100 * p.area) / total)} %</span>
          </li>
        ))}
      </ul>
    </section>
  )
}
