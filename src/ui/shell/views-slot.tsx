import { lazy, Suspense } from 'react'

/** The two views; the drawing comes a moment after the page. */
const Loaded = lazy(async () => ({ default: (await import('../views/index.ts')).Views }))

export const Views = () => (
  <Suspense fallback={<p className="coming">The drawing is coming.</p>}>
    <Loaded />
  </Suspense>
)
