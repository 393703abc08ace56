import { halfOf } from '../../event/index.ts'
import { changeCurrency, changeEvent, useEvent, useStudio } from '../../state/index.ts'
import { fromUnit, toUnit } from '../../units/index.ts'
import type { WorkedEvent } from '../../work-plan/index.ts'
import { currenciesWith } from '../list/currencies.ts'
import { NumberField, SelectField } from '../parts/index.ts'
import { Known } from './order/known.tsx'
import { OrderActs } from './order/order-acts.tsx'
import { OrderMoney } from './order/order-money.tsx'
import { OrderRow } from './order/order-row.tsx'
import { PriceBookActs } from './order/price-book.tsx'
import { SeasonSources } from './season-sources.tsx'
import { byPlant, count, lineKey, money, plantsOf, useLineColour } from './words.ts'
import './order.css'

const DIGITS = { mm: 0, cm: 1, in: 2 } as const
const STEP = { mm: 5, cm: 0.5, in: 0.25 } as const

const Trim = () => {
  const units = useStudio((s) => s.units)
  const trim_mm = useEvent((s) => s.event.trim_mm)
  return (
    <NumberField
      label="cut long first, by"
      unit={units}
      value={Number(toUnit(trim_mm, units).toFixed(DIGITS[units]))}
      min={0}
      max={Number(toUnit(500, units).toFixed(DIGITS[units]))}
      step={STEP[units]}
      digits={DIGITS[units]}
      onChange={(to) =>
        changeEvent({ trim_mm: Math.min(500, fromUnit(to, units)) }, `cut long first, by ${to} ${units}`)
      }
    />
  )
}

const Currency = () => {
  const currency = useStudio((s) => s.prices.currency)
  const options = currenciesWith(currency).map((value) => ({ value, words: value }))
  return <SelectField label="currency" value={currency} options={options} onChange={changeCurrency} />
}

/** What to buy for all the designs together, and what it costs. */
export const OrderPanel = ({ worked }: { worked: WorkedEvent }) => {
  const { order, designs } = worked
  const colourOf = useLineColour()
  const lines = byPlant(order.lines)
  if (lines.length === 0) return <p className="dim">Nothing to order yet: no design of the event has a stem in it.</p>
  const sum = (of: (line: (typeof lines)[number]) => number): number => lines.reduce((n, line) => n + of(line), 0)
  const bunches = sum((l) => l.packs.reduce((n, p) => n + (p.stems > 1 ? p.count : 0), 0))
  return (
    <div className="order">
      <div className="order-head">
        <p className="order-sum">
          <b>{money(order.minor, order.currency)}</b> for{' '}
          {count(
            sum((l) => l.bought),
            'stem',
            'stems',
          )}
          , in {count(bunches, 'bunch', 'bunches')}
        </p>
        <Trim />
        <Currency />
        <OrderActs worked={worked} />
      </div>
      <table className="event-table order-table">
        <caption className="unseen">What to buy, by plant and colour</caption>
        <thead>
          <tr>
            <th colSpan={2} scope="colgroup">
              plant, colour
            </th>
            <th scope="col">pieces</th>
            <th scope="col">stems</th>
            <th scope="col">spare, %</th>
            <th scope="col">spare</th>
            <th scope="col">bunches</th>
            <th scope="col" className="order-left">
              left over
            </th>
            <th scope="col" className="order-price-cell">
              price, {order.currency}
            </th>
            <th scope="col">cost</th>
          </tr>
        </thead>
        <tbody>
          {lines.map((line, i) => (
            <OrderRow
              key={lineKey(line)}
              line={line}
              colour={colourOf(line)}
              again={lines[i - 1]?.plant === line.plant}
              designs={designs}
              currency={order.currency}
            />
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th colSpan={2} scope="row">
              All
            </th>
            <td data-head="pieces">{sum((l) => l.pieces)}</td>
            <td data-head="stems">{sum((l) => l.stems)}</td>
            <td className="order-blank" />
            <td data-head="spare">{sum((l) => l.spareStems)}</td>
            <td data-head="bunches">{bunches}</td>
            <td data-head="left over" className="order-left">
              {sum((l) => l.leftover)}
            </td>
            <td className="order-blank" />
            <td data-head="cost">{money(order.minor, order.currency)}</td>
          </tr>
        </tfoot>
      </table>
      <div className="order-book">
        <p className="dim">
          Prices are your own or, marked <i>example</i>, invented. They are kept in this browser as a price book.
        </p>
        <PriceBookActs />
      </div>
      <OrderMoney worked={worked} />
      <SeasonSources plants={plantsOf(lines)} half={halfOf(worked.event)} />
      <Known order={order} />
    </div>
  )
}
