import { useEffect, useState } from 'react'
import { create } from 'zustand'
import {
  type Arrangement,
  newArrangement,
  paletteProblems,
  readArrangement,
  writeArrangement,
} from '../arrangement/index.ts'
import { plantIds } from '../catalogue/index.ts'
import { OWN_BANDS } from '../readings/index.ts'
import { isPack, type Pack, type PriceBook } from '../stem-list/index.ts'
import {
  type Autosaver,
  askToKeep,
  autosaver,
  browserStore,
  carryLastWords,
  claimDesign,
  forgetLastWords,
  leaveLastWords,
  newName,
  type Release,
  type StoredDesign,
  smallStore,
} from '../storage/index.ts'
import { change, say, showDesign } from './actions.ts'
import type { NamedPalette } from './palettes.ts'
import { withChanges } from './price-changes.ts'
import { useStudio } from './store.ts'
import type { StudioState } from './types.ts'

export type KeptDesign = StoredDesign

/** What the catalogue knows, for whoever reads a file. */
export const known = { plants: new Set(plantIds), bands: OWN_BANDS }
/** What this browser keeps; for the rooms of state alone. */
export const store = browserStore({ known })
const lastWords = smallStore()

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

type DesignSaver = Autosaver<Arrangement, Awaited<ReturnType<typeof store.load>>>
let saver: DesignSaver | null = null
let release: Release | null = null

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

/** The design that is open and has left last words. */
let spoken = ''

/** The page is hidden or goes, and may never run again: what is not written yet is put down at once. */
const partWith = (): void => {
  const unwritten = saver?.unwritten()
  const { designId } = useStudio.getState()
  if (unwritten && leaveLastWords(lastWords, designId, unwritten)) spoken = designId
  void saver?.flush()
}

/** Fetches what this browser keeps (settings, own palettes, the list of designs), and from then on keeps changes. */
export const startKeeping = async (): Promise<void> => {
  const [units, prices, palettes] = await Promise.all(['units', 'prices', 'palettes'].map((key) => store.setting(key)))
  if (units?.ok && ['in', 'cm', 'mm'].includes(String(units.value)))
    change({ units: units.value as StudioState['units'] })
  if (prices?.ok && isPrices(prices.value)) change({ prices: prices.value })
  if (palettes?.ok && Array.isArray(palettes.value)) useDrawer.setState({ palettes: palettes.value.filter(isPalette) })
  await carryLastWords(lastWords, store, known, claimDesign)
  await refreshKept()
  change({ save: { state: 'saved', at: 0 } })

  useStudio.subscribe((now, before) => {
    if (now.document !== before.document && now.designId !== '' && now.designId === before.designId)
      saver?.changed(now.document)
    if (now.prices !== before.prices) void keepPrices(before.prices, now.prices)
    if (now.units !== before.units) void store.putSetting('units', now.units)
  })
  addEventListener('pagehide', partWith)
  addEventListener('visibilitychange', () => document.visibilityState === 'hidden' && partWith())
}

/** Ends the work on the design that is open, everything written. */
const leave = async (): Promise<void> => {
  await saver?.stop()
  release?.()
  saver = null
  release = null
}

/** Claims a design and keeps it saved from now on; without the claim it can be looked at, but another tab writes it. */
const keep = async (id: string): Promise<DesignSaver> => {
  release = await claimDesign(id)
  const onState = (save: StudioState['save']): void => {
    if (save.state === 'saved' && spoken === id) {
      forgetLastWords(lastWords, id)
      spoken = ''
    }
    change({ save })
  }
  saver = autosaver(store, id, { onState, readOnly: release === null })
  return saver
}

/** Begins a new design with this document. It is saved at once, under a key of its own. */
export const beginDesign = async (document: Arrangement): Promise<void> => {
  await leave()
  const id = newName()
  const kept = await keep(id)
  showDesign(id, document)
  await kept.loaded
  kept.changed(document)
  void askToKeep()
  say(`${document.title}: a new design.`)
}

/** Keeps a document under a key of its own without opening it. */
export const keepAside = async (document: Arrangement): Promise<string | null> => {
  const id = newName()
  const result = await store.save(id, document, 0)
  return result.ok ? id : null
}

/** Opens a design that this browser keeps. One that can't be read is offered as far as it is good. */
export const openKept = async (id: string, sheet: StudioState['sheet'] = 'drawing'): Promise<void> => {
  await leave()
  const kept = await keep(id)
  const result = await kept.loaded
  if (result.ok) {
    showDesign(id, result.document, sheet)
    say(`${result.document.title} opened.`)
    return
  }
  await leave()
  change({ save: { state: 'saved', at: 0 } })
  if (result.why === 'unreadable' && 'problems' in result)
    change({ opening: { name: 'The kept design', problems: result.problems, good: result.good } })
  else change({ opening: { name: 'The kept design', problems: [{ path: '', message: result.message }], good: null } })
}

/** Removes a design for good. The open one is left first. */
export const removeKept = async (id: string): Promise<void> => {
  if (useStudio.getState().designId === id) {
    await leave()
    showDesign('', newArrangement(), 'start')
  }
  const result = await store.remove(id)
  say(result.ok ? 'Removed.' : result.message)
  await refreshKept()
}

/** Back to the start page, with everything written and the list fresh. */
export const goToStart = async (): Promise<void> => {
  change({ sheet: 'start', placing: null })
  await saver?.flush()
  await refreshKept()
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

/**
 * Opens the text of a file. What is right opens as a new design; what is not is shown with every place named, and
 * nothing changes before the person agrees. `refusal` is said where there is no text.
 */
export const openText = (name: string, text: string | null, refusal = ''): void => {
  if (text === null) return change({ opening: { name, problems: [{ path: '', message: refusal }], good: null } })
  const read = readArrangement(text, known)
  if (read.kind === 'ok') void beginDesign(read.document)
  else change({ opening: { name, problems: read.problems, good: read.kind === 'partly' ? read.good : null } })
}

/** Opens what is good of the file that waits, as a new design. */
export const agreeToOpen = (): void => {
  const good = useStudio.getState().opening?.good
  if (good) void beginDesign(good)
}

/** The open design as the text of a file. */
export const textOfDesign = (): { text: string; title: string } => {
  const { document } = useStudio.getState()
  return { text: writeArrangement(document), title: document.title }
}

/** The sample arrangements, as files of the site. */
export const SAMPLES = ['orchard-supper', 'window-sill-bowl', 'twenty-four-cups'] as const

const fetchSample = async (name: string): Promise<Arrangement | null> => {
  const response = await fetch(`${import.meta.env.BASE_URL}samples/${name}.json`)
  const read = readArrangement(await response.text(), known)
  return read.kind === 'ok' ? read.document : null
}

const samples = new Map<string, Promise<Arrangement | null>>()

/** A sample by its name; fetched once, unless that fails. */
export const readSample = (name: string): Promise<Arrangement | null> => {
  const asked = samples.get(name)
  if (asked) return asked
  const now = fetchSample(name)
  samples.set(name, now)
  now.catch(() => samples.delete(name))
  return now
}

/** Opens a copy of a sample as the person's own. */
export const openSample = async (name: string): Promise<void> => {
  const document = await readSample(name)
  if (document) await beginDesign(document)
}
