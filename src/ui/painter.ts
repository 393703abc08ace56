import { type Painter, startPainting } from '../state/index.ts'

let started: Painter | null = null

/** The one painter of the page; its worker starts with the first picture. */
export const painter = (): Painter => {
  started ??= startPainting()
  return started
}
