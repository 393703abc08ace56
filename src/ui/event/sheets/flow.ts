import { shifted } from '../../picture/shifted.ts'
import type { Box, Item } from '../../picture/types.ts'

/** Items laid as if they began at y 0, and how high they are, px. */
export interface Block {
  items: readonly Item[]
  height: number
}

/** Blocks one under another, over as many pages as they take. */
export interface Flow {
  /** A block below the last one, or on a new page where it does not fit, there under its head once more. */
  put: (block: Block) => void
  /**
   * A head, with room for `keep` px below it on the same page, so that it does not stand alone at the foot.
   * @param again what stands in its place on the pages after
   */
  head: (block: Block, again: Block, keep: number) => void
  /** Items of each page; at least one page. */
  pages: () => Item[][]
}

export const flowIn = (body: Box): Flow => {
  const pages: Item[][] = [[]]
  let y = body.y
  let above: Block | null = null
  const lay = ({ items, height }: Block): void => {
    pages.at(-1)?.push(...items.map((item) => shifted(item, y)))
    y += height
  }
  const room = (height: number): boolean => {
    if (y + height <= body.y + body.h || y === body.y) return true
    pages.push([])
    y = body.y
    return false
  }
  return {
    put: (block) => {
      if (!room(block.height) && above && block.items.length > 0) lay(above)
      lay(block)
    },
    head: (block, again, keep) => {
      room(block.height + keep)
      lay(block)
      above = again
    },
    pages: () => pages,
  }
}
