import { findPlant } from '../../catalogue/index.ts'
import { change, useStudio } from '../../state/index.ts'
import { minorDigits, priceOf } from '../../stem-list/index.ts'
import { Button, NumberField } from '../parts/index.ts'
import type { ListView } from './derived.ts'

const CURRENCIES = ['EUR', 'GBP', 'USD', 'CAD', 'AUD', 'NZD', 'CHF', 'SEK', 'DKK', 'NOK', 'JPY']

/** The person's own prices. What they have not set is an example of ours, and says so. */
export const Prices = ({ view, onDone }: { view: ListView; onDone: () => void }) => {
  const prices = useStudio((s) => s.prices)
  const per = 10 ** minorDigits(prices.currency)
  const plants = [...new Set(view.rows.map((r) => r.plant))]
  return (
    <section className="prices" aria-label="Prices">
      <div className="head-line">
        <p className="dim">
          Prices marked <i>example</i> are invented. Put in what your market asks, by the bunch; they are kept in this
          browser and go nowhere with the design.
        </p>
        <label className="choice">
          currency
          <select value={prices.currency} onChange={(e) => change({ prices: { ...prices, currency: e.target.value } })}>
            {CURRENCIES.map((c) => (
              <option key={c}>{c}</option>
            ))}
          </select>
        </label>
        <Button onClick={onDone}>Done</Button>
      </div>
      <div className="price-grid">
        {plants.map((id) => {
          const plant = findPlant(id)
          const { minor, example } = priceOf(id, prices)
          const unit = plant?.bunch ? `a bunch of ${plant.bunch.value}` : 'a stem'
          return (
            <div key={id} className="price-row">
              <NumberField
                label={`${plant?.name ?? id}, ${unit}${example ? ' (example)' : ''}`}
                value={minor / per}
                min={0}
                max={10000}
                step={per === 1 ? 1 : 0.5}
                digits={per === 1 ? 0 : 2}
                onChange={(v) =>
                  change({ prices: { ...prices, perBunch: { ...prices.perBunch, [id]: Math.round(v * per) } } })
                }
              />
            </div>
          )
        })}
      </div>
    </section>
  )
}
