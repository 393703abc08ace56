import type { Order } from '../stem-list/index.ts'
import { counted } from './draft.ts'
import type { Clash } from './types.ts'

/** Plants of which some pieces are longer than a stem gives: they can't be bought as they are drawn. */
export const tooLong = ({ lines }: Order, nameOf: (plant: string) => string): Clash[] => {
  const long = new Map<string, number>()
  for (const line of lines) if (line.tooLong > 0) long.set(line.plant, (long.get(line.plant) ?? 0) + line.tooLong)
  return [...long].map(([plant, pieces]) => ({
    tasks: ['book'],
    text: `${nameOf(plant)}: ${counted(pieces, 'stem')} would have to be longer than they come. Ask whether longer ones can be had, or lower them in the drawing.`,
    known: 'the catalogue’s stem lengths, or yours',
  }))
}
