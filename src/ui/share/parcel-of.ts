import { type Arrangement, LIMITS } from '../../arrangement/index.ts'
import type { NamedPalette } from '../../state/index.ts'
import type { PriceBook } from '../../stem-list/index.ts'
import { MOST_OFFERS, type OfferedPalette, type Parcel } from '../../storage/index.ts'
import type { Units } from '../../units/index.ts'

/** What a person ticks. */
export interface Ticks {
  /** Names of the palettes that are offered beside the one on the sheet. */
  offered: readonly string[]
  prices: boolean
  note: boolean
  /** Goes along only if `note` is ticked. */
  words: string
}

const offerOf = ({ name, slots }: NamedPalette): OfferedPalette => ({
  name,
  slots: slots.map(({ colour, part, name: word }) => (word ? { colour, part, name: word } : { colour, part })),
})

/** The palette on the sheet, with the words for its colours where it is one that is known. */
const onSheet = ({ palette }: Arrangement, known: readonly NamedPalette[]): OfferedPalette => {
  const words = new Map<string, string>()
  for (const slot of known.find((p) => p.name === palette.name)?.slots ?? [])
    if (slot.name) words.set(slot.colour.toLowerCase(), slot.name)
  return offerOf({
    name: palette.name,
    about: '',
    slots: palette.slots.map((s) => {
      const name = words.get(s.colour.toLowerCase())
      return name ? { ...s, name } : s
    }),
  })
}

/** What goes to the partner: nothing that was not ticked. */
export const parcelOf = (
  document: Arrangement,
  known: readonly NamedPalette[],
  { offered, prices, note, words }: Ticks,
  units: Units,
  book: PriceBook,
): Parcel => ({
  design: document,
  offers: [
    onSheet(document, known),
    ...offered
      .flatMap((name) => known.find((p) => p.name === name && name !== document.palette.name) ?? [])
      .slice(0, MOST_OFFERS - 1)
      .map(offerOf),
  ],
  units,
  prices: prices ? book : null,
  note: note ? [...words.trim()].slice(0, LIMITS.text).join('') : '',
})
