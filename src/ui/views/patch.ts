/** A rectangle of the sheet on whole device px; empty when its right is not beyond its left. */
export interface Patch {
  left: number
  top: number
  right: number
  bottom: number
}

/** Makes a patch hold a rectangle as well. */
export const widenPatch = (patch: Patch, left: number, top: number, right: number, bottom: number): void => {
  patch.left = Math.min(patch.left, Math.floor(left))
  patch.top = Math.min(patch.top, Math.floor(top))
  patch.right = Math.max(patch.right, Math.ceil(right))
  patch.bottom = Math.max(patch.bottom, Math.ceil(bottom))
}

export const emptyPatch = (): Patch => ({ left: Infinity, top: Infinity, right: -Infinity, bottom: -Infinity })

/** Whether two rectangles have a px in common. */
export const meet = (a: Patch, b: Patch): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom
