import type { Light } from '../../arrangement/index.ts'
import type { Composition, Wanted } from './layout.ts'
import type { SizeName } from './types.ts'

export const KINDS = ['png', 'svg', 'pdf'] as const
export type Kind = (typeof KINDS)[number]

/** What a person wants of the picture. */
export interface Choices extends Wanted {
  light: 'daylight' | 'room'
  withCost: boolean
  kind: Kind
}

export const FIRST_CHOICES: Choices = {
  size: 'a4',
  composition: 'standing',
  light: 'daylight',
  withCost: false,
  kind: 'png',
}

export const SIZE_OPTIONS: { value: SizeName; words: string }[] = [
  { value: 'a4', words: 'A4, upright' },
  { value: 'letter', words: 'US Letter, upright' },
  { value: 'phone', words: 'a phone' },
]

export const COMPOSITION_OPTIONS: { value: Composition; words: string }[] = [
  { value: 'standing', words: 'as it stands' },
  { value: 'drawn', words: 'from the front and from above' },
]

export const KIND_OPTIONS: { value: Kind; words: string }[] = [
  { value: 'png', words: 'PNG, dots' },
  { value: 'svg', words: 'SVG, words and lines' },
  { value: 'pdf', words: 'PDF, to print' },
]

/** A phone's picture is not a page. */
export const kindsFor = (size: SizeName): typeof KIND_OPTIONS =>
  KIND_OPTIONS.filter(({ value }) => size !== 'phone' || value !== 'pdf')

/** The same with what does not go together put right. */
export const agreed = (choices: Choices): Choices =>
  kindsFor(choices.size).some(({ value }) => value === choices.kind) ? choices : { ...choices, kind: 'png' }

export const lightOf = (chosen: Choices['light'], room: Light): Light => (chosen === 'room' ? room : 'daylight')

/** How the arrangement is shown: `It is shown …`. */
export const shownWords = ({ size, composition }: Wanted): string => {
  if (size === 'phone') return 'on its table, seen from a little above'
  return composition === 'drawn'
    ? 'from the front and from above'
    : 'on its table, seen from a little above, and small from the left, from behind, from the right and from above'
}
