import type { Plant } from '../../../catalogue/index.ts'
import { changePrices, useStudio } from '../../../state/index.ts'
import { MOST_PACKS, minorDigits, type Pack, packsOf, toMain, withPacks } from '../../../stem-list/index.ts'
import { Button, NumberField } from '../../parts/index.ts'
import { money } from '../words.ts'
import { MOST_PRICE, MOST_STEMS, NewSize } from './new-size.tsx'

/** What a plant is sold by and for, put in where it stands. An invented price says so; its size is the catalogue's. */
export const PriceCell = ({ plant }: { plant: Plant }) => {
  const prices = useStudio((s) => s.prices)
  const { packs, example } = packsOf(plant, prices)
  const digits = minorDigits(prices.currency)
  const set = (to: readonly Pack[]): void => {
    const words = to.map((p) => `${money(p.minor, prices.currency)} for ${p.stems}`).join(', ')
    changePrices(withPacks(prices, plant, to), `${plant.name}: ${words || 'the example price again'}`)
  }
  const edit = (i: number, pack: Partial<Pack>): void => set(packs.map((p, k) => (k === i ? { ...p, ...pack } : p)))
  return (
    <div className="order-prices">
      {packs.map((pack, i) => (
        <div key={i} className="order-price">
          <NumberField
            label="price"
            spoken={`${plant.name}, ${pack.stems > 1 ? `bunch of ${pack.stems}` : 'a stem'}, ${prices.currency}`}
            hideLabel
            value={toMain(pack.minor, prices.currency)}
            min={0}
            max={MOST_PRICE}
            step={digits === 0 ? 1 : 0.5}
            digits={digits}
            fixed
            onChange={(main) => edit(i, { minor: Math.round(main * 10 ** digits) })}
          />
          {example ? (
            <span className="dim">
              {pack.stems > 1 ? `for ${pack.stems}` : 'a stem'}, <i>example</i>
            </span>
          ) : (
            <>
              <span className="dim">for</span>
              <NumberField
                label="stems in it"
                spoken={plant.name}
                hideLabel
                value={pack.stems}
                min={1}
                max={MOST_STEMS}
                onChange={(stems) => edit(i, { stems: Math.round(stems) })}
              />
              <Button
                kind="word"
                aria-label={
                  packs.length > 1
                    ? `${plant.name}: drop the size of ${pack.stems}`
                    : `${plant.name}: back to the example`
                }
                onClick={() => set(packs.filter((_, k) => k !== i))}
              >
                drop
              </Button>
            </>
          )}
        </div>
      ))}
      {!example && packs.length < MOST_PACKS ? (
        <NewSize
          plant={plant}
          beside={packs.at(-1)!}
          currency={prices.currency}
          onAdd={(pack) => set([...packs, pack])}
        />
      ) : null}
    </div>
  )
}
