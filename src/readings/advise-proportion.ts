import type { Edit } from '../arrangement/index.ts'
import { bandOf } from './bands.ts'
import type { Engine } from './engine.ts'
import { measureProportion, scoreProportion } from './proportion.ts'
import { bestOf, tryOut } from './trial.ts'
import type { Advice } from './types.ts'
import { formWords, listed, numbered, round } from './words.ts'

/** Advice on height and spread, each edit tried and measured. */
export const adviseProportion = (engine: Engine): Advice[] => {
  const p = measureProportion(engine)
  const score = scoreProportion(engine)
  if (!p || score === null) return []
  const { stems, document } = engine.resolved
  const advice: Advice[] = []
  const height = bandOf('proportion', 'heightRatio', document.form)?.band
  const spread = bandOf('proportion', 'spreadRatio', document.form)?.band

  if (height && (p.heightRatio < height[0] || p.heightRatio > height[1])) {
    const low = p.heightRatio < height[0]
    // Just inside the band, so that the smallest change that serves is the one advised.
    const aim = low ? height[0] * 1.03 : height[1] * 0.97
    const ids = stems.filter((s) => s.stem.tip[2] > 0).map((s) => s.id)
    const edits = [aim / p.heightRatio, (1 + aim / p.heightRatio) / 2].map(
      (factor): Edit => ({ do: 'lengthen-stems', ids, factor }),
    )
    const best = bestOf(tryOut(engine, edits, scoreProportion), score + 0.5)
    const tall = stems.toSorted((a, b) => b.stem.tip[2] - a.stem.tip[2]).slice(0, 2)
    const names = listed(tall.map(numbered))
    const text = `${low ? 'Low' : 'High'} for the vessel: ${round(p.heightRatio, 1)} ×, wanted ${height[0]}–${height[1]} × for ${formWords(document.form)}. `
    const factor = best?.edit.do === 'lengthen-stems' ? best.edit.factor : 1
    advice.push(
      best
        ? {
            text: `${text}${low ? 'Lengthen' : 'Shorten'} all stems by ${round(100 * Math.abs(factor - 1))} %; ${names}, stand${tall.length > 1 ? '' : 's'} highest.`,
            stems: ids,
            edit: best.edit,
          }
        : { text: `${text}${names}, stand${tall.length > 1 ? '' : 's'} highest.`, stems: tall.map((s) => s.id) },
    )
  }
  if (spread && (p.spreadRatio < spread[0] || p.spreadRatio > spread[1])) {
    const narrow = p.spreadRatio < spread[0]
    const wide = stems
      .toSorted((a, b) => Math.hypot(b.stem.tip[0], b.stem.tip[1]) - Math.hypot(a.stem.tip[0], a.stem.tip[1]))
      .slice(0, Math.max(1, Math.ceil(stems.length / 6)))
    const aim = (narrow ? spread[0] * 1.03 : spread[1] * 0.97) / p.spreadRatio
    const edits = [aim, (1 + aim) / 2].map((k): Edit => {
      const move = wide.map((s): Edit => {
        const { tip } = s.stem
        return { do: 'shift-stems', ids: [s.id], by: [tip[0] * (k - 1), tip[1] * (k - 1), 0] }
      })
      return { do: 'many', label: narrow ? 'spread out' : 'drawn in', edits: move }
    })
    const best = bestOf(tryOut(engine, edits, scoreProportion), score + 0.5)
    const text = `${narrow ? 'Narrow' : 'Wide'} for the vessel: ${round(p.spreadRatio, 1)} ×, wanted ${spread[0]}–${spread[1]} ×. `
    const names = listed(wide.slice(0, 3).map(numbered))
    advice.push({
      text: `${text}${narrow ? 'Lean out' : 'Draw in'} ${names}${wide.length > 3 ? ` and ${wide.length - 3} more` : ''}.`,
      stems: wide.map((s) => s.id),
      ...(best ? { edit: best.edit } : {}),
    })
  }
  return advice
}
