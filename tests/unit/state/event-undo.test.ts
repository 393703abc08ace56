import { describe, expect, it } from 'vitest'
import { findPlant, PLANTS } from '../../../src/catalogue/index.ts'
import { newEvent, writeEvent } from '../../../src/event/index.ts'
import {
  change,
  changeCurrency,
  changeEvent,
  changePart,
  changePrices,
  redoEvent,
  removePart,
  tick,
  undoEvent,
  useEvent,
  useStudio,
} from '../../../src/state/index.ts'
import { withPacks } from '../../../src/stem-list/index.ts'
import { promise } from '../../promise.ts'
import { numbers } from './commands.ts'

const event = () => useEvent.getState().event
const prices = () => useStudio.getState().prices
/** All that undo has to give back: the event's text and the price book. */
const now = () => writeEvent({ ...event(), designs: {} }) + JSON.stringify(prices())
const steps = () => useEvent.temporal.getState().pastStates.length

const fresh = (): void => {
  change({ prices: { currency: 'EUR', perBunch: {} } })
  useEvent.setState({ event: newEvent('UTC'), prices: null, lastDone: '' })
  useEvent.temporal.getState().clear()
}

const command = (random: () => number): void => {
  const pick = <T>(from: readonly T[]): T => from[Math.floor(random() * from.length)]!
  const whole = (most: number): number => Math.floor(random() * most)
  const { parts, work } = event()
  const ways: (() => void)[] = [
    () => changeEvent({ title: `Title ${whole(3)}` }, 'a title'),
    () => changeEvent({ date: pick(['', '2027-10-09T17:00', '2028-02-29T12:30']) }, 'a date'),
    () => changeEvent({ hours: whole(3) }, 'hours'),
    () => changeEvent({ tables: whole(3) }, 'tables'),
    () => changeEvent({ budget: pick([null, 150_000]), currency: prices().currency }, 'a budget'),
    () => changeEvent({ spare: { [pick(PLANTS).id]: random() } }, 'spare'),
    () => changeEvent({ work: { ...work, people: 1 + whole(5) } }, 'people'),
    () => changeEvent({ parts: [...parts, { design: `d${parts.length}`, copies: 1, place: '' }] }, 'a design'),
    () => parts.length > 0 && changePart(pick(parts).design, { copies: 1 + whole(40) }, 'copies'),
    () => parts.length > 0 && removePart(pick(parts).design, 'taken out'),
    () => tick(`task ${whole(5)}`, random() < 0.5, 'task'),
    () => {
      const plant = findPlant(pick(PLANTS).id)!
      const packs = Array.from({ length: whole(3) }, (_, i) => ({ stems: 5 + i * 5, minor: whole(5000) }))
      changePrices(withPacks(prices(), plant, packs), 'a price')
    },
    () => changeCurrency(pick(['EUR', 'JPY', 'GBP'])),
    () => changePrices({ currency: 'JPY', perBunch: {} }, 'a price book'),
  ]
  pick(ways)()
}

describe('undo of the event', () => {
  it('R3: any script of commands, prices among them, comes back exactly, step by step, and forth again', () => {
    const seeds = process.env.SOAK ? 2000 : 200
    let made = 0
    for (let seed = 1; seed <= seeds; seed++) {
      fresh()
      const random = numbers(seed)
      const states = [now()]
      for (let i = 0; i < 60; i++) {
        const before = steps()
        command(random)
        if (steps() > before) states.push(now())
        else expect(now(), `seed ${seed}: what leaves no step changes nothing`).toBe(states.at(-1))
        // Back and forth on the way, as a hand does.
        if (random() < 0.1 && states.length > 1) {
          undoEvent()
          expect(now(), `seed ${seed}, step ${i} taken back`).toBe(states.at(-2))
          redoEvent()
        }
      }
      made += states.length - 1
      for (let i = states.length - 2; i >= 0; i--) {
        undoEvent()
        expect(now(), `seed ${seed}, back to step ${i}`).toBe(states[i])
      }
      for (let i = 1; i < states.length; i++) {
        redoEvent()
        expect(now(), `seed ${seed}, forth to step ${i}`).toBe(states[i])
      }
    }
    expect(made).toBeGreaterThan(seeds * 30)
    promise(`R3 undo of an event returns exactly, prices too: ${seeds} seeds x 60 commands, ${made} steps, 0 failures`)
  })
})
