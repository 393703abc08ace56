import { type ColourCluster, clusterColours, countColours, FINE_CLUSTERS } from '../colour/index.ts'

/** A picture as bytes r, g, b, a. */
export interface PhotoRequest {
  rgba: Uint8ClampedArray
  width: number
  height: number
}
export interface PhotoReply {
  clusters: ColourCluster[]
}

/** Takes one request of the page. */
export const onRequest = ({ data: { rgba, width, height } }: MessageEvent<PhotoRequest>): void => {
  const clusters = clusterColours(countColours(rgba, width, height), FINE_CLUSTERS)
  self.postMessage({ clusters } satisfies PhotoReply)
}
