import './shown.css'
import { showFragmentOn } from '../../partner/index.ts'

/** Shows the design that the page's own link holds. Another link put into the same window is shown anew. */
export const showLink = (root: HTMLElement): void => {
  addEventListener('hashchange', () => location.reload())
  const start = (): Worker => new Worker(new URL('./shown.worker.ts', import.meta.url), { type: 'module' })
  void showFragmentOn(root, location.hash, location.href.split('#')[0]!, start)
}
