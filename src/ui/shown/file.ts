import '../fonts/fonts.css'
import '../theme/tokens.css'
import './shown.css'
import { answerAsks, showFragmentOn } from '../../partner/index.ts'

const metaOf = (name: string): string =>
  document.querySelector<HTMLMetaElement>(`meta[name="${name}"]`)?.content.trim() ?? ''

/**
 * The script of the page that stands in one file: it is page and worker in one, so that all of it is there once. The worker is
 * started from the very text that the page was started from.
 */
if (typeof document === 'undefined') answerAsks(self)
else {
  const text = document.currentScript?.textContent ?? ''
  const home = metaOf('pedicel-home')
  const start = (): Worker => new Worker(URL.createObjectURL(new Blob([text], { type: 'text/javascript' })))
  const root = document.getElementById('root')
  if (root) void showFragmentOn(root, `#show=${metaOf('pedicel-show')}`, /^https?:/.test(home) ? home : '', start)
}
