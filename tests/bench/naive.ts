import { PART_STRIDE, type Resolved } from '../../src/geometry/index.ts'
import type { createEngine } from '../../src/readings/index.ts'

/** The plain way for comparison: one view after another, every pixel asked of every ellipsoid whose box it is in. */
export const slowSplat = (resolved: Resolved, engine: ReturnType<typeof createEngine>): number => {
  engine.update(resolved)
  const { mm, zeroRow, width, height } = engine.frame.grid
  let touched = 0
  for (let way = 0; way < 12; way++) {
    const [c, s] = [Math.cos((way * Math.PI) / 6), Math.sin((way * Math.PI) / 6)]
    const depth = new Float32Array(width * height).fill(-1e9)
    for (const { parts } of engine.ready)
      for (let o = 0; o < parts.length; o += PART_STRIDE) {
        if (parts[o] !== 0) continue
        const [xx, xy, xz, yy, yz, zz] = [5, 6, 7, 8, 9, 10].map((k) => parts[o + k]!) as [
          number,
          number,
          number,
          number,
          number,
          number,
        ]
        const sxx = c * c * xx - 2 * c * s * xy + s * s * yy
        const sxu = c * xz - s * yz
        const det = sxx * zz - sxu * sxu
        const X = parts[o + 2]! * c - parts[o + 3]! * s
        const [w, h] = [Math.sqrt(sxx), Math.sqrt(zz)]
        for (let U = parts[o + 4]! - h; U < parts[o + 4]! + h; U += mm)
          for (let V = X - w; V < X + w; V += mm) {
            const [dx, du] = [V - X, U - parts[o + 4]!]
            if ((zz * dx * dx - 2 * sxu * dx * du + sxx * du * du) / det > 1) continue
            const i = Math.floor(U / mm + zeroRow) * width + Math.floor(V / mm + width / 2)
            depth[i] = Math.max(depth[i] ?? 0, parts[o + 2]! * s + parts[o + 3]! * c)
            touched += 1
          }
      }
  }
  return touched
}

/** Holes the plain way: air joined with the picture's edge is filled from there, every other pixel asks each pixel of mass. */
export const slowAir = (mass: Uint8Array, width: number, firstRow: number): { enclosed: number; best: number } => {
  const height = mass.length / width
  const open = new Uint8Array(mass.length)
  const stack: [number, number][] = []
  for (let r = firstRow; r < height; r++) stack.push([0, r], [width - 1, r])
  for (let c = 0; c < width; c++) stack.push([c, firstRow], [c, height - 1])
  for (let at = stack.pop(); at; at = stack.pop()) {
    const [c, r] = at
    if (c < 0 || c >= width || r < firstRow || r >= height) continue
    const i = r * width + c
    if (mass[i] || open[i]) continue
    open[i] = 1
    stack.push([c + 1, r], [c - 1, r], [c, r + 1], [c, r - 1])
  }
  let [enclosed, best] = [0, 0]
  for (let i = firstRow * width; i < mass.length; i++) {
    if (mass[i] || open[i]) continue
    enclosed += 1
    let least = Number.POSITIVE_INFINITY
    for (let j = firstRow * width; j < mass.length; j++) {
      if (!mass[j]) continue
      const [dx, dy] = [(i % width) - (j % width), Math.floor(i / width) - Math.floor(j / width)]
      least = Math.min(least, dx * dx + dy * dy)
    }
    best = Math.max(best, least)
  }
  return { enclosed, best }
}
