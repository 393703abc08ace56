import { useEffect, useState } from 'react'
import { create } from 'zustand'
import { isPack, type Pack, type PriceBook } from '../stem-list/index.ts'
import { carryLastWords, claimDesign, type StoredDesign } from '../storage/index.ts'
import { change, say } from './actions.ts'
import { designChanged, partWith } from './design-saver.ts'
import { known, lastWords, store } from './kept-store.ts'
import { takePalettes } from './own-palettes.ts'
import type { NamedPalette } from './palettes.ts'
import { withChanges } from './price-changes.ts'
import { useStudio } from './store.ts'
import type { StudioState } from './types.ts'

export type KeptDesign = StoredDesign

const useDrawer = create<{ designs: KeptDesign[] }>()(() => ({ designs: [] }))
/** Designs kept in this browser, newest first. */
export const useKeptDesigns = (): KeptDesign[] => useDrawer((s) => s.designs)
/** The palettes of the house; fetched when first asked for, none until then. */
export const useHousePalettes = (): readonly NamedPalette[] => {
  const [palettes, setPalettes] = useState<readonly NamedPalette[]>([])
  useEffect(() => {
    let live = true
    import('./house-palettes.ts').then(({ HOUSE_PALETTES }) => {
      if (live) setPalettes(HOUSE_PALETTES)
    })
    return () => {
      live = false
    }
  }, [])
  return palettes
}

/** Looks again which designs this browser keeps. */
export const refreshKept = async (): Promise<void> => {
  const result = await store.list()
  if (result.ok) useDrawer.setState({ designs: result.designs })
}

const isPacks = (x: unknown): boolean =>
  typeof x === 'object' &&
  x !== null &&
  Object.values(x).every(
    (packs) =>
      Array.isArray(packs) && packs.every((p: unknown) => typeof p === 'object' && p !== null && isPack(p as Pack)),
  )
const isPrices = (x: unknown): x is StudioState['prices'] => {
  const p = x as StudioState['prices'] | null
  return (
    typeof p === 'object' &&
    p !== null &&
    /^[A-Z]{3}$/.test(String(p.currency)) &&
    typeof p.perBunch === 'object' &&
    p.perBunch !== null &&
    Object.values(p.perBunch).every((n) => Number.isSafeInteger(n) && n >= 0) &&
    (p.packs === undefined || isPacks(p.packs))
  )
}

const keepPrices = async (before: PriceBook, now: PriceBook): Promise<void> => {
  const put = (there: unknown): PriceBook => (isPrices(there) ? withChanges(there, before, now) : now)
  const result = await store.changeSetting('prices', put)
  if (!result.ok) say(`Your prices are not kept: ${result.message}`)
}

const isUnits = (x: unknown): x is StudioState['units'] => ['in', 'cm', 'mm'].includes(String(x))
const isCsv = (x: unknown): x is StudioState['csv'] => ['comma', 'semicolon'].includes(String(x))

/** Settings come as they are kept: that is no change. */
let taking = false

/** Takes the settings that this browser keeps; what the person has changed before they came holds. */
const takeSettings = async (): Promise<void> => {
  const begun = useStudio.getState()
  const keys = ['units', 'csv', 'prices', 'palettes']
  const [units, csv, prices, palettes] = await Promise.all(keys.map((key) => store.setting(key)))
  const now = useStudio.getState()
  taking = true
  if (units?.ok && isUnits(units.value) && now.units === begun.units) change({ units: units.value })
  if (csv?.ok && isCsv(csv.value) && now.csv === begun.csv) change({ csv: csv.value })
  if (prices?.ok && isPrices(prices.value)) {
    const same = now.prices === begun.prices
    change({ prices: same ? prices.value : withChanges(prices.value, begun.prices, now.prices) })
  }
  if (palettes?.ok) takePalettes(palettes.value)
  taking = false
}

/** Keeps changes from now on, and fetches what this browser keeps: settings, own palettes, the list of designs. */
export const startKeeping = async (): Promise<void> => {
  useStudio.subscribe((now, before) => {
    if (now.document !== before.document && now.designId !== '' && now.designId === before.designId)
      designChanged(now.document)
    if (taking) return
    if (now.prices !== before.prices) void keepPrices(before.prices, now.prices)
    if (now.csv !== before.csv) void store.putSetting('csv', now.csv)
    if (now.units !== before.units) void store.putSetting('units', now.units)
  })
  addEventListener('pagehide', partWith)
  addEventListener('visibilitychange', () => document.visibilityState === 'hidden' && partWith())
  await takeSettings()
  await carryLastWords(lastWords, store, known, claimDesign)
  await refreshKept()
  // A design that was begun meanwhile has a state of its own.
  if (useStudio.getState().designId === '') change({ save: { state: 'saved', at: 0 } })
}
