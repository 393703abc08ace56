import type { Arrangement, Light } from '../arrangement/index.ts'
import type { Frame } from '../drawing/index.ts'

/**
 * How well a picture is painted: masses blocked in, a glance at the flowers (small, for the turning), a quick look, the
 * flowers.
 */
export type Level = 'sketch' | 'glance' | 'draft' | 'fine'
export const LEVELS: readonly Level[] = ['sketch', 'glance', 'draft', 'fine']

/** What is looked at: which of the palettes on offer, from where (degrees), in which light. */
export interface View {
  which: number
  turn: number
  light: Light
}
/** Device pixels. */
export interface Size {
  width: number
  height: number
}

/** What the page sends. The designs come first; a newer request does not end an older one, `drop` does. */
export type Ask =
  | { kind: 'designs'; documents: Arrangement[] }
  | { kind: 'paint'; ticket: number; view: View; size: Size; level: Level }
  | { kind: 'drop'; ticket: number }

export type Reply =
  | { ticket: number; painted: { width: number; height: number; rgba: Uint8ClampedArray<ArrayBuffer>; frame: Frame } }
  | { ticket: number; failed: string }

/** As much of a Worker, or of one end of a MessageChannel, as is used. */
export interface Port<Out, In> {
  postMessage(message: Out, options?: { transfer: Transferable[] }): void
  onmessage: ((event: MessageEvent<In>) => void) | null
  terminate?(): void
}

/** From a little above, as one stands before a table, degrees. Ours. */
export const PITCH = 14
