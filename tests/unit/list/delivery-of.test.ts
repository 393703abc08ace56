import { describe, expect, it } from 'vitest'
import { deliveryIn } from '../../../src/ui/event/order/delivery-of.ts'
import { planOf, settledTiming } from '../../../src/work-plan/index.ts'
import { about, event, line, order } from '../work-plan/made.ts'

const worked = (over: Parameters<typeof event>[0], ...plants: string[]) => {
  const made = event(over)
  const orders = order(...plants.map((plant) => line(plant, 12)))
  return { event: made, designs: [], order: orders, plan: planOf(made, orders, about) }
}

describe('when a line of the order is to come', () => {
  it('is the day on which the plan takes it in, not the day of the event', () => {
    const all = worked({ date: '2027-04-24T15:00' }, 'rose', 'peony', 'carnation', 'hydrangea')
    const deliveryOf = deliveryIn(all)
    const arrivals = all.plan.tasks.filter((t) => t.kind === 'arrive')
    expect(arrivals.length).toBeGreaterThan(1)
    for (const task of arrivals)
      for (const plant of task.plants) expect(deliveryOf({ plant })!.day).toBe(task.start.slice(0, 10))
    expect(deliveryOf({ plant: 'peony' })!.day).not.toBe('2027-04-24')
  })
  it('is told in words that no browser turns about', () => {
    const deliveryOf = deliveryIn(
      worked({ date: '2027-04-24T15:00', deliveries: { days: [], of: { rose: 1 } } }, 'rose'),
    )
    expect(deliveryOf({ plant: 'rose' })).toMatchObject({ day: '2027-04-23', words: 'Friday 23 April 2027' })
  })
  it('a peony that comes the day before is asked for open, on its best day further on, and one that comes early in tighter bud', () => {
    const { opens, best } = settledTiming('peony', 8, { days: [], of: {} })
    const on = (day: number): string =>
      deliveryIn(worked({ deliveries: { days: [], of: { peony: day } } }, 'peony'))({ plant: 'peony' })!.how
    expect(on(1)).toBe(`as open as it is to be, as it has only 1 of up to ${opens} days to open`)
    expect(on(best)).toBe(`further on, as it has only ${best} of up to ${opens} days to open`)
    expect(on(best + 2)).toBe('in tighter bud, as it comes 2 days early')
    expect(deliveryIn(worked({}, 'carnation'))({ plant: 'carnation' })!.how).toBe('')
  })
  it('is not settled for an event without a date', () => {
    expect(deliveryIn(worked({ date: '' }, 'rose'))({ plant: 'rose' })).toBeNull()
  })
})
