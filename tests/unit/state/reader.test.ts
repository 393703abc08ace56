import { beforeEach, describe, expect, it, vi } from 'vitest'
import { newArrangement } from '../../../src/arrangement/index.ts'
import {
  change,
  perform,
  preview,
  redo,
  resetStudio,
  settle,
  showDesign,
  startReading,
  undo,
  useStudio,
} from '../../../src/state/index.ts'
import type { ReadingsRequest } from '../../../src/state/readings.worker.ts'

/** Stands in for a worker: keeps what it is asked, and answers when told. */
interface Asked {
  name: string
  requests: ReadingsRequest[]
  onmessage: ((e: { data: unknown }) => void) | null
}
const workers = vi.hoisted((): Asked[] => [])
vi.mock('../../../src/state/start-worker.ts', () => ({
  startWorker: (name: string) => {
    const made = {
      name,
      requests: [] as ReadingsRequest[],
      onmessage: null,
      postMessage: (r: ReadingsRequest) => made.requests.push(r),
      terminate: () => undefined,
    }
    workers.push(made)
    return made
  },
}))

const of = (name: string): Asked => workers.find((w) => w.name === name)!
const answer = (name: string, readings: unknown[] = []): void => of(name).onmessage?.({ data: { readings } })

describe('readings in the page', () => {
  let stop: () => void
  beforeEach(() => {
    vi.useFakeTimers()
    workers.length = 0
    resetStudio()
    stop = startReading()
    showDesign('d', newArrangement())
    change({ drawn: 'd' })
    return () => {
      stop()
      vi.useRealTimers()
    }
  })

  it('are asked in the person’s units, and again when those change', () => {
    vi.advanceTimersByTime(1000)
    expect(of('readings').requests.map((r) => r.units)).toEqual(['cm'])
    expect(of('advice').requests.map((r) => r.units)).toEqual(['cm'])
    answer('readings')
    answer('advice')
    change({ units: 'in' })
    vi.advanceTimersByTime(1000)
    expect(of('readings').requests.map((r) => r.units)).toEqual(['cm', 'in'])
    expect(of('advice').requests.map((r) => r.units)).toEqual(['cm', 'in'])
  })

  it('that come late in units no longer wanted do not stand for the new ones', () => {
    vi.advanceTimersByTime(1000)
    change({ units: 'mm' })
    const before = useStudio.getState().readings
    answer('advice', [{ id: 'late' }])
    expect(useStudio.getState().readings).toBe(before)
  })

  it('are those of what is shown after a step is taken back and done again, though its advice was there before', () => {
    const shown = (): unknown => useStudio.getState().readings
    vi.advanceTimersByTime(1000)
    answer('readings')
    answer('advice')
    perform({ do: 'set-title', title: 'Changed' })
    vi.advanceTimersByTime(1000)
    answer('readings', [{ id: 'changed' }])
    answer('advice', [{ id: 'changed, advised' }])
    undo()
    vi.advanceTimersByTime(20)
    answer('readings', [{ id: 'as before' }])
    expect(shown()).toEqual([{ id: 'as before' }])
    redo()
    vi.advanceTimersByTime(20)
    answer('readings', [{ id: 'changed' }])
    expect(shown()).toEqual([{ id: 'changed' }])
    vi.advanceTimersByTime(1000)
    answer('advice', [{ id: 'changed, advised' }])
    expect(shown()).toEqual([{ id: 'changed, advised' }])
  })

  it('bring advice when a drag is over, though the last picture of it was read already', () => {
    vi.advanceTimersByTime(1000)
    answer('readings')
    answer('advice')
    preview({ do: 'set-title', title: 'By hand' })
    vi.advanceTimersByTime(1000)
    answer('readings')
    expect(of('advice').requests).toHaveLength(1)
    settle('title changed')
    vi.advanceTimersByTime(1000)
    expect(of('advice').requests.map((r) => r.document.title)).toEqual([newArrangement().title, 'By hand'])
    expect(of('readings').requests).toHaveLength(2)
  })

  it('bring advice on a new design once its first picture stands, or after six seconds without one', () => {
    showDesign('e', { ...newArrangement(), title: 'e' })
    vi.advanceTimersByTime(3000)
    expect(of('readings').requests).toHaveLength(1)
    expect(workers.some((w) => w.name === 'advice')).toBe(false)
    change({ drawn: 'e' })
    vi.advanceTimersByTime(1000)
    expect(of('advice').requests.map((r) => r.document.title)).toEqual(['e'])
    answer('advice')
    showDesign('f', { ...newArrangement(), title: 'f' })
    vi.advanceTimersByTime(6100)
    expect(of('advice').requests.map((r) => r.document.title)).toEqual(['e', 'f'])
  })

  it('that come late of one design are not shown for another', () => {
    vi.advanceTimersByTime(1000)
    showDesign('e', { ...newArrangement(), title: 'e' })
    answer('readings', [{ id: 'of d' }])
    expect(useStudio.getState().readings).toEqual([])
    vi.advanceTimersByTime(1000)
    answer('readings', [{ id: 'of e' }])
    expect(useStudio.getState().readings).toEqual([{ id: 'of e' }])
  })

  it('are asked anew for the same document as a new design', () => {
    vi.advanceTimersByTime(1000)
    answer('readings', [{ id: 'as before' }])
    showDesign('e', useStudio.getState().document)
    change({ drawn: 'e' })
    vi.advanceTimersByTime(1000)
    answer('readings', [{ id: 'as a new design' }])
    expect(useStudio.getState().readings).toEqual([{ id: 'as a new design' }])
  })

  it('are not asked again for what changes neither document nor units', () => {
    vi.advanceTimersByTime(1000)
    answer('readings')
    change({ turn: 30, openReading: 'proportion' })
    vi.advanceTimersByTime(1000)
    expect(of('readings').requests).toHaveLength(1)
    perform({ do: 'set-title', title: 'Another' })
    expect(of('readings').requests).toHaveLength(2)
  })
})
