import type { WorkedEvent } from '../../../work-plan/index.ts'
import { budgetWords, count, money } from '../words.ts'

/**
 * Fresh flowers at 3 to 5 times what they cost: Florists' Review, "Pricing for profit".
 */
const SHOP = [3, 5] as const

/** What the order costs by design, by table and against the budget. Material alone. */
export const OrderMoney = ({ worked: { event, designs, order } }: { worked: WorkedEvent }) => {
  const { currency, minor } = order
  const budget = budgetWords(event, order)
  const examples = order.lines.filter((l) => l.example).length
  return (
    <section className="order-money" aria-label="What it costs">
      <h2>What it costs</h2>
      <table className="event-table">
        <thead>
          <tr>
            <th scope="col">design</th>
            <th scope="col">how many</th>
            <th scope="col">all</th>
            <th scope="col">one</th>
          </tr>
        </thead>
        <tbody>
          {designs.map((d) => (
            <tr key={d.design}>
              <th scope="row">{d.title}</th>
              <td>{d.copies}</td>
              <td>{money(order.minorOf[d.design] ?? 0, currency)}</td>
              <td>{money((order.minorOf[d.design] ?? 0) / d.copies, currency)}</td>
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row">All the flowers</th>
            <td>{designs.reduce((n, d) => n + d.copies, 0)}</td>
            <td>{money(minor, currency)}</td>
            <td />
          </tr>
          {event.tables > 0 ? (
            <tr>
              <th scope="row">For each of {count(event.tables, 'table', 'tables')}</th>
              <td />
              <td />
              <td>{money(minor / event.tables, currency)}</td>
            </tr>
          ) : null}
          {budget === null ? null : (
            <tr className={budget.over ? 'order-over' : undefined}>
              <th scope="row">{budget.words}</th>
              <td />
              <td>{budget.amount}</td>
              <td />
            </tr>
          )}
        </tfoot>
      </table>
      <p className="dim">
        Flowers and leaves alone, spare and what is left over among them; no vessels, labour or transport. A bunch that
        several designs share is split by the stems each takes of it.
        {examples > 0
          ? ` ${examples} of ${order.lines.length} lines stand at example prices, which are invented: put in what your market asks.`
          : ''}
      </p>
      <details className="order-fold">
        <summary>What a shop would ask</summary>
        <p>
          From {money(minor * SHOP[0], currency)} to {money(minor * SHOP[1], currency)}: fresh flowers at three to five
          times their cost. The rule is of Florists' Review, <i>Pricing for profit</i>; it is no price of this tool and
          has no part in the sums above.
        </p>
      </details>
    </section>
  )
}
