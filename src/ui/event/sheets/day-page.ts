import { fiveWords, type Task, timeWords, weekdayWords } from '../../../work-plan/index.ts'
import { cut } from '../../picture/text.ts'
import type { Item, Laid } from '../../picture/types.ts'
import { INK, INK2, LINE } from '../../picture/types.ts'
import type { WorkedEvent } from '../use-worked-event.ts'
import { careOf } from './care.ts'
import { type Block, flowIn } from './flow.ts'
import { bodyOf, numberedPages } from './frame.ts'
import { HEAD, type Pen, paragraph, rule, STRONG, TEXT, words } from './pen.ts'

/** Where a task's title begins: its time stands before it, px. */
const TITLE_AT = 300

/** One task: when, what, by how many hands, and what to do. @returns its items as if it began at y 0, and its height */
const taskItems = (pen: Pen, task: Task, done: boolean, x: number, width: number): Block => {
  const time = task.span_ms || task.start !== task.end ? timeWords(task) : ''
  // What is longer than a day's hours has no room before the title.
  const before = task.span_ms && pen.measure(time, TEXT) <= TITLE_AT - 80 ? time : ''
  const title = time && !before ? `${task.title}, ${time}` : task.title
  const work = task.hand_min > 0 ? `${fiveWords(task.hand_min)} of hands` : ''
  const hands = cut([task.who, work].filter(Boolean).join(', '), TEXT, width * 0.42, pen.measure)
  const items: Item[] = [
    { kind: 'box', box: { x, y: 6, w: 34, h: 34 }, fill: done ? INK : null, stroke: INK, weight: 2 },
    words(pen, before, TEXT, x + 60, 36),
    words(
      pen,
      cut(title, STRONG, width - TITLE_AT - pen.measure(hands, TEXT) - 30, pen.measure),
      STRONG,
      x + TITLE_AT,
      36,
    ),
    words(pen, hands, TEXT, x + width, 36, 'right', INK2),
  ]
  let y = 82
  for (const step of task.steps) {
    const block = paragraph(pen, step, { ...TEXT, size: 34 }, { x: x + TITLE_AT, y, width: width - TITLE_AT, most: 4 })
    items.push(...block.items)
    y = block.y
  }
  return { items, height: y + 8 }
}

/**
 * The plan of work by days, with boxes to tick, as many pages as it takes; first what will not go as it stands.
 * @param withCare the sheet Take care is printed too
 */
export const dayPages = (pen: Pen, { plan, event }: WorkedEvent, when: string, withCare: boolean): Laid[] => {
  const body = bodyOf(pen.sheet, 1)
  const flow = flowIn(body)
  for (const { text } of plan.clashes) {
    const block = paragraph(pen, `Mind: ${text}`, STRONG, { x: body.x, y: 50, width: body.w })
    flow.put({ items: block.items, height: block.y - 20 })
  }
  let day = ''
  for (const task of plan.tasks) {
    const block = taskItems(pen, task, event.done.includes(task.key), body.x, body.w)
    const its = task.start.slice(0, 10)
    if (its !== day) {
      day = its
      const head = (said: string): Block => ({
        items: [words(pen, said, HEAD, body.x, 62), rule([body.x, 84], [body.x + body.w, 84], 2, LINE)],
        height: 108,
      })
      flow.head(head(weekdayWords(day)), head(`${weekdayWords(day)}, continued`), block.height)
    }
    flow.put(block)
  }
  return numberedPages(pen, flow.pages(), {
    title: 'Day by day',
    aside: event.title || 'The event',
    facts: when,
    lines: [
      `Times by the clock of ${event.zone.replaceAll('_', ' ')}. The venue’s and the local rules come before this plan.`,
    ],
    inches: false,
    foot: careOf(
      plan.tasks.flatMap((t) => t.plants),
      withCare,
    ),
  })
}
