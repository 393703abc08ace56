import { useEffect, useState } from 'react'
import { loadColourNames } from '../../colour/index.ts'
import { type Faces, loadFaces } from './paint.ts'

/** The language of the page's words; dates and money follow the kind of English that the person's browser asks for. */
export const language = (): string => navigator.languages.find((l) => l.startsWith('en')) ?? 'en-GB'

interface Tools {
  faces: Faces
  /** A name for any #rrggbb. */
  general: (hex: string) => string
}

/** Faces and colour names, which come once; null until then. */
export const useTools = (): Tools | null => {
  const [tools, setTools] = useState<Tools | null>(null)
  useEffect(() => {
    let live = true
    const names = loadColourNames().then(
      ({ colourName }) => colourName,
      () => (hex: string) => hex,
    )
    Promise.all([loadFaces(), names]).then(([faces, general]) => {
      if (live) setTools({ faces, general })
    })
    return () => {
      live = false
    }
  }, [])
  return tools
}
