import { change, useStudio } from '../../../state/index.ts'
import type { CsvKind } from '../../../stem-list/index.ts'
import { SelectField } from '../../parts/index.ts'

export const CSV_KINDS: Record<CsvKind, string> = {
  comma: '1.50, commas between cells',
  semicolon: '1,50, semicolons between cells',
}

/**
 * A spreadsheet opens a CSV by the country it is set to, and puts all in one column, or takes 1.50 for a day in May, where that
 * is another. So it is chosen, said and kept.
 */
export const CsvKindField = () => {
  const kind = useStudio((s) => s.csv)
  const options = Object.entries(CSV_KINDS).map(([value, words]) => ({ value: value as CsvKind, words }))
  return <SelectField label="CSV with" value={kind} options={options} onChange={(csv) => change({ csv })} />
}
