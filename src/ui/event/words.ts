import { findPlant } from '../../catalogue/index.ts'
import { formatMoney, type OrderLine, toMain } from '../../stem-list/index.ts'
import { colourWords } from '../../telling/index.ts'
import { useColourWords } from '../palettes/use-names.ts'

const NO_PALETTE: ReadonlyMap<string, string> = new Map()

/** A line's colour in words: of the plant's own colours, else the nearest of the published names. */
export const useLineColour = (): ((line: Pick<OrderLine, 'plant' | 'colour'>) => string) => {
  const general = useColourWords()
  return ({ plant, colour }) => colourWords(colour, findPlant(plant) ?? null, NO_PALETTE, general)
}

/** Whole minor units as people write them. */
export const money = (minor: number, currency: string): string => formatMoney(toMain(minor, currency), currency)

export const count = (n: number, one: string, many: string): string => `${n} ${n === 1 ? one : many}`

/** Lines of the same plant under one another, plants in the order in which they first come. */
export const byPlant = <T extends { plant: string }>(lines: readonly T[]): T[] => {
  const groups = new Map<string, T[]>()
  for (const line of lines) groups.set(line.plant, [...(groups.get(line.plant) ?? []), line])
  return [...groups.values()].flat()
}

export const lineKey = ({ plant, colour }: Pick<OrderLine, 'plant' | 'colour'>): string => `${plant} ${colour}`
