import { linearOf } from './srgb.ts'

/** Contrast ratio 1–21 of two colours #rrggbb. WCAG 2.2; text asks for 4.5 (3 if large), parts of controls for 3. */
export const contrastRatio = (first: string, second: string): number => {
  const [a, b] = [first, second].map((hex) => {
    const [r, g, bl] = linearOf(hex)
    return 0.2126 * r + 0.7152 * g + 0.0722 * bl + 0.05
  }) as [number, number]
  return Math.max(a, b) / Math.min(a, b)
}
