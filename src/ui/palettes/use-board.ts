import { useMemo, useState } from 'react'
import { type NamedPalette, useHousePalettes, useOwnPalettes, useStudio } from '../../state/index.ts'

/** Held beside the one on the sheet, at most. */
export const MOST_BESIDE = 5
const AT_FIRST = 3

/** The palette of the sheet, with what is known of it by its name. */
const onTheSheet = (
  { name, slots }: { name: string; slots: readonly NamedPalette['slots'][number][] },
  all: readonly NamedPalette[],
): NamedPalette => {
  const known = all.find((p) => p.name === name)
  return {
    name: name || 'Unnamed',
    about: known?.about ?? '',
    slots: slots.map((s, i) => {
      const same = known?.slots[i]
      return { ...s, ...(same?.name && same.colour === s.colour ? { name: same.name } : {}) }
    }),
  }
}

/** Which palettes stand side by side. */
export const useBoard = () => {
  const palette = useStudio((s) => s.document.palette)
  const own = useOwnPalettes()
  const house = useHousePalettes()
  const all = useMemo(() => {
    const mine = new Set(own.map((p) => p.name))
    return [...own, ...house.filter((p) => !mine.has(p.name))]
  }, [own, house])
  const now = useMemo(() => onTheSheet(palette, all), [palette, all])
  const [picked, setPicked] = useState<string[] | null>(null)
  // Until one picks: the first three that are not on the sheet.
  const chosen = useMemo(
    () =>
      picked ??
      all
        .map((p) => p.name)
        .filter((name) => name !== palette.name)
        .slice(0, AT_FIRST),
    [picked, all, palette.name],
  )
  const beside = useMemo(
    () => chosen.flatMap((name) => all.find((p) => p.name === name && p.name !== now.name) ?? []),
    [chosen, all, now.name],
  )
  return {
    all,
    now,
    chosen,
    beside,
    toggle: (name: string) =>
      setPicked(chosen.includes(name) ? chosen.filter((n) => n !== name) : [...chosen, name].slice(-MOST_BESIDE)),
    putFirst: (name: string) => setPicked([name, ...chosen.filter((n) => n !== name)].slice(0, MOST_BESIDE)),
  }
}
