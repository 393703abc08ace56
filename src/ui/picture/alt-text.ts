import { counted, listed } from '../../telling/index.ts'
import type { Facts } from './facts.ts'

const sentence = (text: string): string => `${text[0]?.toUpperCase() ?? ''}${text.slice(1)}.`

/**
 * The picture as a paragraph, for those who can't see it: vessel, size, plants with counts and colours, palette, light.
 * @param shown how it is shown: `from the front and from above`
 */
export const alternativeText = (facts: Facts, shown: string): string => {
  const parts = [`“${facts.title}”:`, sentence(facts.subtitle)]
  parts.push(`It is shown ${shown}.`)
  const vessel = `The ${facts.vessel} is ${facts.vesselWide} wide and ${facts.vesselHigh} high.`
  if (facts.plants.length === 0) parts.push(`No flowers stand in it yet.`, vessel)
  else {
    parts.push(`The flowers are ${facts.wide} wide, and ${facts.high} high from the table.`, vessel)
    const plants = facts.plants.map((p) => `${p.name} in ${p.colourWord} (${p.count})`)
    parts.push(
      `In each ${facts.stems === 1 ? 'stands one stem' : `stand ${counted(facts.stems)} stems`}: ${listed(plants)}.`,
    )
  }
  if (facts.swatches.length > 0) {
    const name = facts.paletteName ? `The palette ${facts.paletteName}` : 'The palette'
    parts.push(`${name} is ${listed([...new Set(facts.swatches.map((s) => s.word))])}.`)
  }
  parts.push(`Colours are shown in ${facts.lightWords}.`)
  if (facts.date) parts.push(`For ${facts.date}.`)
  if (facts.cost) parts.push(`All together ${facts.cost.total} (${facts.cost.standing}).`)
  if (facts.cautions[0]) parts.push(`Take care. ${facts.cautions[0]}`)
  return parts.join(' ')
}
