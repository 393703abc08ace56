import type { Held } from './types.ts'

/** A value without a unit and no greater than one is a share, and said in hundredths. */
export const isShare = ({ unit, scale }: Pick<Held, 'unit' | 'scale'>): boolean =>
  unit === '' && scale[0] >= -1 && scale[1] <= 1
