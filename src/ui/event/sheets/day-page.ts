import type { Task } from '../../../work-plan/index.ts'
import { shifted } from '../../picture/shifted.ts'
import type { Item, Laid } from '../../picture/types.ts'
import { INK, INK2, LINE } from '../../picture/types.ts'
import type { WorkedEvent } from '../use-worked-event.ts'
import { careOf } from './care.ts'
import { bodyOf, HEAD, type Pen, page, paragraph, rule, STRONG, TEXT, words } from './frame.ts'

const clock = (task: Task): string => (task.span_ms ? task.start.slice(11) : '')

/** One task: when, what, by how many hands, and what to do. @returns its items as if it began at y 0, and its height */
const taskItems = (
  pen: Pen,
  task: Task,
  done: boolean,
  x: number,
  width: number,
): { items: Item[]; height: number } => {
  const minutes = Math.round(task.hand_min)
  const hands = minutes > 0 ? `${minutes} min of hands, by ${task.people}` : ''
  const items: Item[] = [
    { kind: 'box', box: { x, y: 6, w: 34, h: 34 }, fill: done ? INK : null, stroke: INK, weight: 2 },
    words(pen, clock(task), TEXT, x + 60, 36),
    words(pen, task.title, STRONG, x + 190, 36),
    words(pen, hands, TEXT, x + width, 36, 'right', INK2),
  ]
  let y = 82
  for (const step of task.steps) {
    const block = paragraph(pen, step, { ...TEXT, size: 34 }, { x: x + 190, y, width: width - 190, most: 3 })
    items.push(...block.items)
    y = block.y
  }
  return { items, height: y + 8 }
}

/** The plan of work by days, with boxes to tick, as many pages as it takes. */
export const dayPages = (
  pen: Pen,
  { plan, event }: WorkedEvent,
  said: { when: string; dayOf: (day: string) => string; inches: boolean },
): Laid[] => {
  const body = bodyOf(pen.sheet)
  const pages: Item[][] = [[]]
  let y = body.y
  const turn = (): void => {
    pages.push([])
    y = body.y
  }
  const put = (items: Item[], height: number): void => {
    if (y + height > body.y + body.h && y > body.y) turn()
    pages.at(-1)?.push(...items.map((item) => shifted(item, y)))
    y += height
  }
  let day = ''
  for (const task of plan.tasks) {
    const block = taskItems(pen, task, event.done.includes(task.key), body.x, body.w)
    const its = task.start.slice(0, 10)
    if (its !== day) {
      // A day's head does not stand alone at the foot of a page.
      if (y + 90 + block.height > body.y + body.h) turn()
      day = its
      put([words(pen, said.dayOf(day), HEAD, body.x, 62), rule([body.x, 84], [body.x + body.w, 84], 2, LINE)], 108)
    }
    put(block.items, block.height)
  }
  for (const { text } of plan.clashes) {
    const block = paragraph(pen, `Mind: ${text}`, STRONG, { x: body.x, y: 50, width: body.w })
    put(block.items, block.y - 20)
  }
  return pages.map((items, i) =>
    page(
      pen,
      {
        title: 'Day by day',
        aside: event.title || 'The event',
        facts: said.when,
        lines: [
          `Times by the clock of ${event.zone.replaceAll('_', ' ')}. The venue’s and the local rules come before this plan.`,
        ],
        page: pages.length > 1 ? `${i + 1} of ${pages.length}` : '',
        inches: said.inches,
        foot: careOf(plan.tasks.flatMap((t) => t.plants)),
      },
      items,
    ),
  )
}
