import { findPlant } from '../../catalogue/index.ts'
import { changeCurrency, changePrices, startEvent, useStudio } from '../../state/index.ts'
import { minorDigits, packsOf, withPacks } from '../../stem-list/index.ts'
import { Button, NumberField } from '../parts/index.ts'
import { currenciesWith } from './currencies.ts'
import type { ListView } from './derived.ts'

/** The person's own prices. What they have not set is an example of ours, and says so. */
export const Prices = ({ view, onDone }: { view: ListView; onDone: () => void }) => {
  const prices = useStudio((s) => s.prices)
  const digits = minorDigits(prices.currency)
  const per = 10 ** digits
  const plants = [...new Set(view.rows.map((r) => r.plant))].flatMap((id) => findPlant(id) ?? [])
  return (
    <section className="prices" aria-label="Prices">
      <div className="head-line">
        <p className="dim">
          Prices marked <i>example</i> are invented. Put in what your market asks, by the bunch; they are kept in this
          browser and go nowhere with the design. A second size of a plant is put in on the event's order.
        </p>
        <label className="choice">
          currency
          <select
            value={prices.currency}
            onChange={(e) => {
              const to = e.target.value
              // The event's budget has a part in it.
              void startEvent().then(() => changeCurrency(to))
            }}
          >
            {currenciesWith(prices.currency).map((c) => (
              <option key={c}>{c}</option>
            ))}
          </select>
        </label>
        <Button onClick={onDone}>Done</Button>
      </div>
      <div className="price-grid">
        {plants.map((plant) => {
          const { packs, example } = packsOf(plant, prices)
          return packs.map((pack, i) => (
            <div key={`${plant.id} ${i}`} className="price-row">
              <NumberField
                label={`${plant.name}, ${pack.stems > 1 ? `a bunch of ${pack.stems}` : 'a stem'}${example ? ' (example)' : ''}`}
                value={pack.minor / per}
                min={0}
                max={10000}
                step={digits === 0 ? 1 : 0.5}
                digits={digits}
                fixed
                onChange={(v) => {
                  const to = packs.map((p, k) => (k === i ? { ...p, minor: Math.round(v * per) } : p))
                  changePrices(withPacks(prices, plant, to), `${plant.name}: a price of your own`)
                }}
              />
            </div>
          ))
        })}
      </div>
    </section>
  )
}
