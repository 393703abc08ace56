import { create } from 'zustand'
import type { CsvKind } from '../../../stem-list/index.ts'
import { SelectField } from '../../parts/index.ts'

/** Which spreadsheet a CSV is for, until the page is closed. */
export const useCsvKind = create<{ kind: CsvKind; choose: (kind: CsvKind) => void }>()((set) => ({
  kind: 'comma',
  choose: (kind) => set({ kind }),
}))

export const CSV_KINDS: Record<CsvKind, string> = {
  comma: '1.50, commas between cells',
  semicolon: '1,50, semicolons between cells',
}

/**
 * A spreadsheet opens a CSV by the country it is set to, and puts all in one column, or takes 1.50 for a day in May, where that
 * is another. So it is chosen and said.
 */
export const CsvKindField = () => {
  const { kind, choose } = useCsvKind()
  const options = Object.entries(CSV_KINDS).map(([value, words]) => ({ value: value as CsvKind, words }))
  return <SelectField label="CSV with" value={kind} options={options} onChange={choose} />
}
