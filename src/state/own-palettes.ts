import { create } from 'zustand'
import { paletteProblems } from '../arrangement/index.ts'
import { say } from './actions.ts'
import { store } from './kept-store.ts'
import type { NamedPalette } from './palettes.ts'

const useOwn = create<{ palettes: NamedPalette[] }>()(() => ({ palettes: [] }))
/** The person's own palettes. */
export const useOwnPalettes = (): NamedPalette[] => useOwn((s) => s.palettes)

const isPalette = (x: unknown): x is NamedPalette => paletteProblems(x).length === 0
const palettesIn = (x: unknown): NamedPalette[] => (Array.isArray(x) ? x.filter(isPalette) : [])
const without = (palettes: readonly NamedPalette[], name: string): NamedPalette[] =>
  palettes.filter((p) => p.name !== name)

/** Shows the palettes that this browser keeps, behind those that were made before they came. */
export const takePalettes = (kept: unknown): void => {
  const { palettes } = useOwn.getState()
  const others = palettesIn(kept).filter(({ name }) => !palettes.some((p) => p.name === name))
  useOwn.setState({ palettes: [...palettes, ...others] })
}

/** Changes the palettes as they are kept by now: those of another tab stay. */
const changePalettes = async (to: (all: NamedPalette[]) => NamedPalette[], done: string): Promise<void> => {
  useOwn.setState(({ palettes }) => ({ palettes: to(palettes) }))
  const result = await store.changeSetting('palettes', (there) => to(palettesIn(there)))
  say(result.ok ? done : result.message)
}

/** Keeps a palette of the person's own; one of the same name is replaced. */
export const keepPalette = (palette: NamedPalette): Promise<void> =>
  changePalettes((all) => [palette, ...without(all, palette.name)], `${palette.name} kept.`)

/** Throws a palette of the person's own away. */
export const removePalette = (name: string): Promise<void> =>
  changePalettes((all) => without(all, name), `${name} thrown away.`)
