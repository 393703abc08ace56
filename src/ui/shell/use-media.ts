import { useSyncExternalStore } from 'react'

/** Follows a media query. */
export const useMedia = (query: string): boolean =>
  useSyncExternalStore(
    (tell) => {
      const list = matchMedia(query)
      list.addEventListener('change', tell)
      return () => list.removeEventListener('change', tell)
    },
    () => matchMedia(query).matches,
  )

/** One column with words to switch; two columns; three. Widths ours. */
export const PHONE = '(max-width: 700px)'
export const WIDE = '(min-width: 1200px)'
