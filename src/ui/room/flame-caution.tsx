import { useMemo } from 'react'
import { GENERAL_CAUTIONS } from '../../catalogue/index.ts'
import { nearFlames, type Scene } from '../../drawing/index.ts'
import type { Resolved } from '../../geometry/index.ts'
import type { Units } from '../../units/index.ts'
import { flameWords } from './laid-words.ts'

/** What flames ask of this design, as it is drawn, and what holds for every one and comes first: the venue's word. */
export const FlameCaution = ({ resolved, scene, units }: { resolved: Resolved; scene: Scene; units: Units }) => {
  const near = useMemo(() => nearFlames(resolved, scene), [resolved, scene])
  const drawn = scene.things.some(({ kind }) => kind === 'candle')
  return (
    <div className="flames">
      {flameWords(near, units).map((words) => (
        <p key={words} className="care">
          {words}
        </p>
      ))}
      {drawn ? null : <p className="care">There is no place left on this table for a candle.</p>}
      {GENERAL_CAUTIONS.filter(({ about, text }) => about === 'flame' || /flames may need a permit/.test(text)).map(
        (c) => (
          <p key={c.text} className="care">
            {c.text} <span className="dim">({c.source})</span>
          </p>
        ),
      )}
    </div>
  )
}
