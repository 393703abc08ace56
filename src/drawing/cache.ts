/** Things that were made before, the ones not asked for longest given up first. */
export interface Cache {
  /** Bytes that may be held. */
  limit: number
  bytes: number
  kept: Map<string, { value: unknown; bytes: number }>
}

/** 160 MB of sprites and meshes: about two hundred fine stems of a dense screen. Ours. */
const DEFAULT_LIMIT = 160 * 1024 * 1024

export const createCache = (limit: number = DEFAULT_LIMIT): Cache => ({ limit, bytes: 0, kept: new Map() })

/** What stands under `key`, now the last to be given up; undefined where nothing does. */
export const recall = <T>(cache: Cache, key: string): T | undefined => {
  const known = cache.kept.get(key)
  if (!known) return undefined
  // A Map keeps the order of insertion: putting it back last makes the first one the oldest.
  cache.kept.delete(key)
  cache.kept.set(key, known)
  return known.value as T
}

/** Keeps a value, giving up others so that never more than `limit` bytes are held. What is larger is not kept. */
export const keep = (cache: Cache, key: string, value: unknown, bytes: number): void => {
  const before = cache.kept.get(key)
  if (before) {
    cache.kept.delete(key)
    cache.bytes -= before.bytes
  }
  if (bytes > cache.limit) return
  cache.kept.set(key, { value, bytes })
  cache.bytes += bytes
  for (const [oldest, { bytes: freed }] of cache.kept) {
    if (cache.bytes <= cache.limit) break
    cache.kept.delete(oldest)
    cache.bytes -= freed
  }
}

/** What stands under `key`, or what `make` makes, remembered. */
export const remembered = <T>(cache: Cache, key: string, make: () => T, sizeOf: (value: T) => number): T => {
  const known = recall<T>(cache, key)
  if (known !== undefined) return known
  const value = make()
  keep(cache, key, value, sizeOf(value))
  return value
}
