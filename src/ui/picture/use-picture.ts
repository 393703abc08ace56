import { useMemo } from 'react'
import type { Arrangement } from '../../arrangement/index.ts'
import { useHousePalettes, useOwnPalettes, useStudio } from '../../state/index.ts'
import { alternativeText } from './alt-text.ts'
import { type Choices, lightOf, shownWords } from './choices.ts'
import { factsOf } from './facts.ts'
import { layoutFacts } from './layout.ts'
import { canvasMeasure, type Faces } from './paint.ts'
import type { Laid } from './types.ts'
import { language, useTools } from './use-tools.ts'

export interface PictureView {
  document: Arrangement
  faces: Faces
  laid: Laid
  words: string
}

/** The laid out sheet and its words, anew with every change; null until the letters are there. */
export const usePicture = ({
  size,
  composition,
  light,
  withCost,
}: Pick<Choices, 'size' | 'composition' | 'light' | 'withCost'>): PictureView | null => {
  const document = useStudio((s) => s.document)
  const units = useStudio((s) => s.units)
  const prices = useStudio((s) => s.prices)
  const own = useOwnPalettes()
  const house = useHousePalettes()
  const tools = useTools()
  return useMemo(() => {
    if (!tools) return null
    const palette = [...own, ...house].find((p) => p.name === document.palette.name)
    const colourNames = new Map<string, string>()
    for (const slot of palette?.slots ?? []) if (slot.name) colourNames.set(slot.colour.toLowerCase(), slot.name)
    const facts = factsOf(document, {
      units,
      language: language(),
      colourNames,
      generalName: tools.general,
      prices,
      withCost,
      light: lightOf(light, document.setting.light),
    })
    return {
      document,
      faces: tools.faces,
      laid: layoutFacts(facts, { size, composition }, canvasMeasure(tools.faces)),
      words: alternativeText(facts, shownWords({ size, composition })),
    }
  }, [tools, document, units, prices, own, house, size, composition, light, withCost])
}
