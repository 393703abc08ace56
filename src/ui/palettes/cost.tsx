import { formatMoney, type Purchase } from '../../stem-list/index.ts'
import { listed } from '../../telling/index.ts'
import { Button } from '../parts/index.ts'

interface Props {
  cost: Purchase
  before: Purchase
  /** Plants that do not come near their colour, lower case. */
  missing: readonly string[]
  state: string | undefined
  onPut: (() => void) | undefined
  onEdit: (() => void) | undefined
}

/** Names that are written out; the others are counted. */
const NAMED = 3

const missingWords = (missing: readonly string[]): string => {
  if (missing.length === 0) return 'every plant comes near its colour'
  const more = missing.length - NAMED
  const names = listed(more > 0 ? [...missing.slice(0, NAMED), `${more} more`] : missing)
  return `${names} ${missing.length > 1 ? 'do' : 'does'} not come near ${missing.length > 1 ? 'their' : 'its'} colour`
}

const changeWords = (more: number, currency: string): string =>
  Math.abs(more) < 0.005 ? 'costs the same' : `${more > 0 ? '+' : '−'} ${formatMoney(Math.abs(more), currency)}`

/** What it costs, what that changes, which plants are not to be had in it, and the way onto the sheet. */
export const CostCell = ({ cost, before, missing, state, onPut, onEdit }: Props) => (
  <>
    <p className="cost">
      <b>{formatMoney(cost.total, cost.currency)}</b>
      {cost.copies > 1 ? (
        <span className="dim">{formatMoney(cost.total / cost.copies, cost.currency)} each</span>
      ) : null}
      {onPut ? <span className="dim">{changeWords(cost.total - before.total, cost.currency)}</span> : null}
    </p>
    <p className="dim missing">{missingWords(missing)}</p>
    <div className="field-line">
      {state ? <p className="state-words">{state}</p> : null}
      {onPut ? <Button onClick={onPut}>Put on the sheet</Button> : null}
      {onEdit ? (
        <Button kind="word" onClick={onEdit}>
          Change a copy
        </Button>
      ) : null}
    </div>
  </>
)
