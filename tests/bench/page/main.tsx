import { createRoot } from 'react-dom/client'
import '../../../src/ui/theme/tokens.css'
import { projectPoint, resolveArrangement } from '../../../src/geometry/index.ts'
import { openSheet, select, showDesign, startReading, useStudio } from '../../../src/state/index.ts'
import { painter } from '../../../src/ui/painter.ts'
import { Views } from '../../../src/ui/views/index.ts'
import { dome } from '../made.ts'

const rest = (ms: number) => new Promise((done) => setTimeout(done, ms))
const frame = () => new Promise<number>((done) => requestAnimationFrame(done))
const median = (values: number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN

startReading()
createRoot(document.getElementById('root')!).render(<Views />)

/** Times between animation frames while `each` does its work in every frame, ms (the browser's rate limit is off). */
const frames = async (count: number, each: (i: number) => void): Promise<number[]> => {
  const times: number[] = []
  let last = await frame()
  for (let i = 0; i < count; i++) {
    each(i)
    const now = await frame()
    times.push(now - last)
    last = now
  }
  return times.slice(Math.floor(count / 5))
}

const summary = (times: number[]) => ({ median: median(times), min: Math.min(...times), max: Math.max(...times) })

const wrapper = (): HTMLElement => document.querySelector<HTMLElement>('[data-axis-x]')!

/** Is anything but grey on the still layer? */
const probe = document.createElement('canvas')
probe.width = 48
probe.height = 72
const hasFlowers = (): boolean => {
  const from = document.querySelector<HTMLCanvasElement>('.views canvas')
  const context = probe.getContext('2d', { willReadFrequently: true })
  if (!from || !context || from.width === 0) return false
  context.clearRect(0, 0, 48, 72)
  context.drawImage(from, 0, 0, 48, 72)
  const { data } = context.getImageData(0, 0, 48, 72)
  let coloured = 0
  for (let i = 0; i < data.length; i += 4)
    if (
      data[i + 3]! > 128 &&
      Math.max(data[i]!, data[i + 1]!, data[i + 2]!) - Math.min(data[i]!, data[i + 1]!, data[i + 2]!) > 40
    )
      coloured += 1
  return coloured > 60
}

const bench = {
  /** Shows a dome of so many stems; gives the time to the first flowers of either view, ms. */
  async load(count: number): Promise<number> {
    showDesign('empty', dome(0))
    openSheet('drawing')
    await frame()
    while (hasFlowers()) await frame()
    const before = performance.now()
    showDesign(`bench ${count}`, dome(count))
    openSheet('drawing')
    while (!hasFlowers() && performance.now() - before < 60_000) await frame()
    return performance.now() - before
  },
  /** Drags the head of one stem by real pointer events on the page. */
  async drag(count: number) {
    const box = wrapper()
    const { left, top } = box.getBoundingClientRect()
    const [scale, axis, rim] = [box.dataset.scale, box.dataset.axisX, box.dataset.rimY].map(Number) as [
      number,
      number,
      number,
    ]
    const stem = resolveArrangement(useStudio.getState().document).stems[4]!
    select([stem.id])
    await rest(1500)
    const tip = projectPoint(stem.stem.tip, { turn: 0, pitch: 0 })
    const [x, y] = [left + axis + tip[0] * scale, top + rim - tip[1] * scale]
    const target = document.elementFromPoint(x, y)!
    const send = (type: string, dx: number, dy: number) =>
      target.dispatchEvent(
        new PointerEvent(type, {
          pointerId: 1,
          pointerType: 'mouse',
          isPrimary: true,
          button: 0,
          buttons: type === 'pointerup' ? 0 : 1,
          clientX: x + dx,
          clientY: y + dy,
          bubbles: true,
          cancelable: true,
        }),
      )
    send('pointerdown', 0, 0)
    for (let i = 0; i < 10; i++) {
      send('pointermove', i, 0)
      await rest(60)
    }
    const times = await frames(count, (i) => send('pointermove', 40 * Math.sin(i / 9), 30 * Math.cos(i / 7)))
    const moved = useStudio.getState().draft !== null
    send('pointerup', 0, 0)
    return { ...summary(times), moved }
  },
  /** The stated reference: the same picture painted bare, every stem's cached sprite by drawImage, both views, each frame. */
  async bare(count: number) {
    const design = useStudio.getState().document
    const scale = Number(wrapper().dataset.scale)
    const resolved = resolveArrangement(design)
    const ids = design.stems.map((s) => s.id)
    const views = await Promise.all(
      [0, 90].map(async (pitch) => {
        const angle = { turn: 0, pitch }
        const sprites = await painter().sprites(`bare ${pitch}`, design, ids, angle, scale, 'draft')
        const canvas = document.createElement('canvas')
        canvas.width = 578
        canvas.height = 433
        canvas.style.cssText = `position:absolute;left:600px;top:${pitch * 5}px`
        document.body.append(canvas)
        const items = resolved.stems.flatMap((s) => {
          const sprite = sprites?.get(s.id)
          if (!sprite || sprite.width === 0) return []
          const image = document.createElement('canvas')
          image.width = sprite.width
          image.height = sprite.height
          image
            .getContext('2d')!
            .putImageData(new ImageData(new Uint8ClampedArray(sprite.rgba), sprite.width, sprite.height), 0, 0)
          const at = projectPoint(s.stem.tip, angle)
          return [
            {
              image,
              x: Math.round(289 + at[0] * scale + sprite.left),
              y: Math.round(260 - at[1] * scale + sprite.top),
              far: at[2] ?? 0,
            },
          ]
        })
        items.sort((a, b) => a.far - b.far)
        return { canvas, context: canvas.getContext('2d')!, items }
      }),
    )
    const times = await frames(count, () => {
      for (const { context, items, canvas } of views) {
        context.clearRect(0, 0, canvas.width, canvas.height)
        for (const { image, x, y } of items) context.drawImage(image, x, y)
      }
    })
    for (const { canvas } of views) canvas.remove()
    return { ...summary(times), sprites: views.reduce((n, v) => n + v.items.length, 0) }
  },
}
Object.assign(window, { bench })
