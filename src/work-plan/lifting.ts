import type { Load, Work } from './load.ts'

/** Flags for one piece, g: said from the first on, lifted by two from the second. Ours, below the 23 kg of NIOSH's ideal case. */
const SAY_g = 10_000
const TWO_g = 16_000

const mass = ({ mass_g }: Work): number => mass_g ?? 0

/** `12.3 kg` */
export const kiloWords = (grams: number): string => `${(grams / 1000).toFixed(1)} kg`

/** Designs of which a piece is too heavy for one to lift. */
export const forTwo = ({ works }: Load): Work[] => works.filter((w) => mass(w) > TWO_g)

/** A line for each design that is heavy, with what it weighs full. */
export const heavySteps = ({ works }: Load): string[] =>
  works
    .filter((w) => mass(w) > SAY_g)
    .map((w) =>
      mass(w) > TWO_g
        ? `${w.title} weighs about ${kiloWords(mass(w))} full: two lift it, or it is carried empty and filled there.`
        : `${w.title} weighs about ${kiloWords(mass(w))} full: carry it with less water, or in two.`,
    )
