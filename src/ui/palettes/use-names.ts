import { useEffect, useState } from 'react'
import { loadColourNames } from '../../colour/index.ts'

const nothing = (): string => ''

/** Colour words of the published list, `moderate purplish pink` for #rrggbb; '' until the list is there. */
export const useColourWords = (): ((hex: string) => string) => {
  const [words, setWords] = useState<(hex: string) => string>(() => nothing)
  useEffect(() => {
    let live = true
    loadColourNames().then(({ colourName }) => {
      if (live) setWords(() => colourName)
    })
    return () => {
      live = false
    }
  }, [])
  return words
}
