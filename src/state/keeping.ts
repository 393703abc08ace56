import { useEffect, useState } from 'react'
import { create } from 'zustand'
import { paletteProblems } from '../arrangement/index.ts'
import { isPack, type Pack, type PriceBook } from '../stem-list/index.ts'
import { carryLastWords, claimDesign, type StoredDesign } from '../storage/index.ts'
import { change, say } from './actions.ts'
import { designChanged, partWith } from './design-saver.ts'
import { known, lastWords, store } from './kept-store.ts'
import type { NamedPalette } from './palettes.ts'
import { withChanges } from './price-changes.ts'
import { useStudio } from './store.ts'
import type { StudioState } from './types.ts'

export type KeptDesign = StoredDesign

interface Drawer {
  designs: KeptDesign[]
  palettes: NamedPalette[]
}
const useDrawer = create<Drawer>()(() => ({ designs: [], palettes: [] }))
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
/** The person's own palettes. */
export const useOwnPalettes = (): NamedPalette[] => useDrawer((s) => s.palettes)

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
const isPalette = (x: unknown): x is NamedPalette => paletteProblems(x).length === 0

const keepPrices = async (before: PriceBook, now: PriceBook): Promise<void> => {
  const put = (there: unknown): PriceBook => (isPrices(there) ? withChanges(there, before, now) : now)
  const result = await store.changeSetting('prices', put)
  if (!result.ok) say(`Your prices are not kept: ${result.message}`)
}

/** Fetches what this browser keeps (settings, own palettes, the list of designs), and from then on keeps changes. */
export const startKeeping = async (): Promise<void> => {
  const keys = ['units', 'csv', 'prices', 'palettes']
  const [units, csv, prices, palettes] = await Promise.all(keys.map((key) => store.setting(key)))
  if (units?.ok && ['in', 'cm', 'mm'].includes(String(units.value)))
    change({ units: units.value as StudioState['units'] })
  if (csv?.ok && ['comma', 'semicolon'].includes(String(csv.value))) change({ csv: csv.value as StudioState['csv'] })
  if (prices?.ok && isPrices(prices.value)) change({ prices: prices.value })
  if (palettes?.ok && Array.isArray(palettes.value)) useDrawer.setState({ palettes: palettes.value.filter(isPalette) })
  await carryLastWords(lastWords, store, known, claimDesign)
  await refreshKept()
  change({ save: { state: 'saved', at: 0 } })

  useStudio.subscribe((now, before) => {
    if (now.document !== before.document && now.designId !== '' && now.designId === before.designId)
      designChanged(now.document)
    if (now.prices !== before.prices) void keepPrices(before.prices, now.prices)
    if (now.csv !== before.csv) void store.putSetting('csv', now.csv)
    if (now.units !== before.units) void store.putSetting('units', now.units)
  })
  addEventListener('pagehide', partWith)
  addEventListener('visibilitychange', () => document.visibilityState === 'hidden' && partWith())
}

const putPalettes = async (palettes: NamedPalette[], done: string): Promise<void> => {
  useDrawer.setState({ palettes })
  const result = await store.putSetting('palettes', palettes)
  say(result.ok ? done : result.message)
}

/** Keeps a palette of the person's own; one of the same name is replaced. */
export const keepPalette = (palette: NamedPalette): Promise<void> =>
  putPalettes(
    [palette, ...useDrawer.getState().palettes.filter((p) => p.name !== palette.name)],
    `${palette.name} kept.`,
  )

/** Throws a palette of the person's own away. */
export const removePalette = (name: string): Promise<void> =>
  putPalettes(
    useDrawer.getState().palettes.filter((p) => p.name !== name),
    `${name} thrown away.`,
  )
