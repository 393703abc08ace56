import { useState } from 'react'
import type { Plant } from '../../../catalogue/index.ts'
import { minorDigits, type Pack, toMain } from '../../../stem-list/index.ts'
import { Button, NumberField } from '../../parts/index.ts'

/** More than any bunch is sold by. Ours. */
export const MOST_STEMS = 1000
/** Dearest that may be typed, main units. Ours. */
export const MOST_PRICE = 100_000

interface Props {
  plant: Plant
  /** The size it has already. */
  beside: Pack
  currency: string
  onAdd: (pack: Pack) => void
}

/** Another size that a plant is sold in: nothing is reckoned with it before it has a price. */
export const NewSize = ({ plant, beside, currency, onAdd }: Props) => {
  const [draft, setDraft] = useState<Pack | null>(null)
  const digits = minorDigits(currency)
  if (!draft)
    return (
      <Button
        kind="word"
        aria-label={`${plant.name}: another size`}
        onClick={() => setDraft({ stems: Math.min(MOST_STEMS, 2 * beside.stems), minor: 0 })}
      >
        another size
      </Button>
    )
  return (
    <div className="order-price">
      <NumberField
        label="price"
        spoken={`${plant.name}, the new size, ${currency}`}
        hideLabel
        value={toMain(draft.minor, currency)}
        min={0}
        max={MOST_PRICE}
        step={digits === 0 ? 1 : 0.5}
        digits={digits}
        fixed
        onChange={(main) => setDraft({ ...draft, minor: Math.round(main * 10 ** digits) })}
      />
      <span className="dim">for</span>
      <NumberField
        label="stems in it"
        spoken={`${plant.name}, the new size`}
        hideLabel
        value={draft.stems}
        min={1}
        max={MOST_STEMS}
        onChange={(stems) => setDraft({ ...draft, stems: Math.round(stems) })}
      />
      <Button
        kind="word"
        off={draft.minor === 0}
        aria-label={`${plant.name}: add this size`}
        onClick={() => {
          onAdd(draft)
          setDraft(null)
        }}
      >
        add
      </Button>
      <Button kind="word" aria-label={`${plant.name}: no new size`} onClick={() => setDraft(null)}>
        leave
      </Button>
    </div>
  )
}
