import { useDeferredValue, useMemo } from 'react'
import { type Resolved, resolveArrangement } from '../../geometry/index.ts'
import { useShown, useStudio } from '../../state/index.ts'
import { type Purchase, purchase, type StemRow, stemList } from '../../stem-list/index.ts'

export interface ListView {
  resolved: Resolved
  rows: StemRow[]
  /** For one arrangement alone, and for all of them together. */
  one: Purchase
  all: Purchase
}

/** The list of what is shown, gesture included; may lag a frame behind the views while the hand moves. */
export const useListView = (): ListView => {
  const shown = useDeferredValue(useShown())
  const prices = useStudio((s) => s.prices)
  return useMemo(() => {
    const resolved = resolveArrangement(shown)
    return {
      resolved,
      rows: stemList(resolved),
      one: purchase(resolved, 1, prices),
      all: purchase(resolved, shown.setting.copies, prices),
    }
  }, [shown, prices])
}
