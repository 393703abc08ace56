/** What a worker of the house is for; all run the same file and fetch only their own part of it. */
export type WorkerName = 'painter' | 'readings' | 'advice' | 'trial' | 'photo' | 'outline' | 'png'

/** A worker by its name. */
export const startWorker = (name: WorkerName): Worker =>
  new Worker(new URL('./house.worker.ts', import.meta.url), { type: 'module', name })
