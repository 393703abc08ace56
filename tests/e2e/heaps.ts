import type { CDPSession, Page } from '@playwright/test'

/** What the page and each of its workers hold after their rubbish was taken out, bytes: objects and buffers together. */
export type Held = Record<string, number>

interface Usage {
  usedSize: number
  backingStorageSize?: number
}
interface Reply {
  id: number
  result?: unknown
  error?: { message: string }
}

/** Asks a worker as a debugger asks a page; ids are by session, so one count serves all. */
const workerCaller = (session: CDPSession) => {
  const waiting = new Map<number, (reply: Reply) => void>()
  let last = 0
  session.on('Target.receivedMessageFromTarget', ({ message }) => {
    const reply = JSON.parse(message) as Reply
    waiting.get(reply.id)?.(reply)
    waiting.delete(reply.id)
  })
  return async (sessionId: string, method: string): Promise<unknown> => {
    last += 1
    const id = last
    const answer = new Promise<Reply>((resolve) => void waiting.set(id, resolve))
    await session.send('Target.sendMessageToTarget', { sessionId, message: JSON.stringify({ id, method }) })
    const { result, error } = await answer
    if (error) throw new Error(`${method}: ${error.message}`)
    return result
  }
}

const bytesOf = ({ usedSize, backingStorageSize }: Usage): number => {
  if (backingStorageSize === undefined) throw new Error('this browser does not tell the size of buffers')
  return usedSize + backingStorageSize
}

/** From now on, what the page and its workers hold. Workers that were started before are found too. */
export const watchHeaps = async (page: Page): Promise<() => Promise<Held>> => {
  const session = await page.context().newCDPSession(page)
  const ask = workerCaller(session)
  const workers = new Map<string, string>()
  session.on('Target.attachedToTarget', ({ sessionId, targetInfo }) => {
    if (targetInfo.type === 'worker') workers.set(sessionId, targetInfo.title || targetInfo.url)
  })
  session.on('Target.detachedFromTarget', ({ sessionId }) => void workers.delete(sessionId))
  await session.send('Target.setAutoAttach', { autoAttach: true, waitForDebuggerOnStart: false, flatten: false })
  return async () => {
    // What one collection frees may keep more alive until the next: finalisers, weak maps.
    const held: Held = {}
    for (let k = 0; k < 3; k++) await session.send('HeapProfiler.collectGarbage')
    held.page = bytesOf((await session.send('Runtime.getHeapUsage')) as Usage)
    for (const [id, name] of workers) {
      for (let k = 0; k < 3; k++) await ask(id, 'HeapProfiler.collectGarbage')
      held[name] = (held[name] ?? 0) + bytesOf((await ask(id, 'Runtime.getHeapUsage')) as Usage)
    }
    return held
  }
}
