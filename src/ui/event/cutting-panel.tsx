import { useMemo } from 'react'
import { findPlant } from '../../catalogue/index.ts'
import { useStudio } from '../../state/index.ts'
import { type BenchPiece, benchRows, cutPlan, type OrderLine, uncutOf } from '../../stem-list/index.ts'
import { formatLength, type Units } from '../../units/index.ts'
import { choicesOf, type EventDesign, type WorkedEvent } from '../../work-plan/index.ts'
import { Plate } from '../list/plate.tsx'
import { benchNumbers, pieceWords } from './cut-words.ts'
import { givesWords } from './cutting/gives.ts'
import { KnownStems } from './cutting/known-stems.tsx'
import { LeftOfLine } from './cutting/left-of-line.tsx'
import { OwnStem } from './cutting/own-stem.tsx'
import { TooLong } from './cutting/too-long.tsx'
import { byPlant, count, lineKey, money, useLineColour } from './words.ts'
import './order.css'

/** Whom a piece is for, in words. */
type WordsOf = (piece: BenchPiece) => string

const Piece = ({ piece, wordsOf, units }: { piece: BenchPiece; wordsOf: WordsOf; units: Units }) => (
  <span className="cut-piece">
    <b>
      {piece.each > 1 ? `${piece.each} × ` : ''}
      {formatLength(piece.length_mm, units)}
    </b>{' '}
    {wordsOf(piece)}
  </span>
)

interface LineProps {
  line: OrderLine
  colour: string
  designs: readonly EventDesign[]
  wordsOf: WordsOf
  /** Another line of the same plant stands above: what its stems are like is there. */
  again: boolean
}

const CutLine = ({ line, colour, designs, wordsOf, again }: LineProps) => {
  const units = useStudio((s) => s.units)
  const plant = findPlant(line.plant)
  const { given } = line
  const rows = useMemo(
    () => benchRows(cutPlan(line.places, line.given), line.places, (mm) => formatLength(mm, units)),
    [line, units],
  )
  if (!plant) return null
  const apart = rows.some((r) => r.pieces.some((p) => p.from === 'side'))
  return (
    <details className="cut-line" open>
      <summary>
        <Plate plant={line.plant} colour={line.colour} size={26} /> <b>{plant.name}</b> <i>{colour}</i>
        <span className="dim">
          {count(line.pieces, 'piece', 'pieces')} from {count(line.stems, 'stem', 'stems')}
          {givesWords(line, units)}
        </span>
      </summary>
      {again ? null : <OwnStem plant={plant} />}
      <TooLong line={line} plant={plant} />
      <table className="event-table cut-table">
        <thead>
          <tr>
            <th scope="col">stems</th>
            <th scope="col">{given.sides > 0 ? 'from the main axis' : 'cut to'}</th>
            {apart ? <th scope="col">from the side stems</th> : null}
          </tr>
        </thead>
        <tbody>
          {rows.map((row, i) => (
            <tr key={i}>
              <th scope="row">{row.stems}</th>
              {(apart ? (['main', 'side'] as const) : (['main'] as const)).map((from) => (
                <td
                  key={from}
                  data-head={apart ? (from === 'side' ? 'from the side stems' : 'from the main axis') : undefined}
                >
                  {row.pieces.map((piece, k) =>
                    piece.from === from ? <Piece key={k} piece={piece} wordsOf={wordsOf} units={units} /> : null,
                  )}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      <LeftOfLine line={line} designs={designs} />
    </details>
  )
}

/** Which stem gives which pieces, for the bench. */
export const CuttingPanel = ({ worked: { event, designs, order, plan } }: { worked: WorkedEvent }) => {
  const prices = useStudio((s) => s.prices)
  const units = useStudio((s) => s.units)
  const colourOf = useLineColour()
  const uncut = useMemo(() => [...uncutOf(order, choicesOf(event, prices), findPlant).values()], [order, prices, event])
  const wordsOf = useMemo(() => {
    const numbers = new Map(designs.map((d) => [d.design, benchNumbers(d, plan)]))
    return (piece: BenchPiece) => pieceWords(piece, designs, (d) => numbers.get(d.design) ?? new Map())
  }, [designs, plan])
  const lines = byPlant(order.lines)
  if (lines.length === 0) return <p className="dim">Nothing to cut yet.</p>
  const stems = order.lines.reduce((n, l) => n + l.stems, 0)
  const bought = order.lines.reduce((n, l) => n + l.bought, 0)
  const [uncutStems, uncutBought, uncutMinor] = [
    uncut.reduce((n, u) => n + u.stems, 0),
    uncut.reduce((n, u) => n + u.bought, 0),
    uncut.reduce((n, u) => n + u.minor, 0),
  ]
  const saved = uncutMinor - order.minor
  return (
    <div className="order">
      <p className="order-sum">
        {count(stems, 'stem', 'stems')} to cut, {bought} bought for {money(order.minor, order.currency)}.{' '}
        {uncutStems > stems ? (
          <span className="dim">
            Without cutting any apart it would be {uncutStems} stems, {uncutBought} bought for{' '}
            {money(uncutMinor, order.currency)}
            {saved > 0 ? `: ${money(saved, order.currency)} more` : ''}.
          </span>
        ) : (
          <span className="dim">No stem of it is cut apart.</span>
        )}
      </p>
      <p className="dim">
        Lengths are what to cut first, {formatLength(event.trim_mm, units)} over what the drawing needs; stems are
        numbered as on the bench sheet. How long side stems are is half of the stem (ours) or, where all flowers stand
        at the top, from memory: measure what came, put it in here, and cut the longest pieces first. The foot of a stem
        that is left has leaves alone, and is counted nowhere.
      </p>
      <div className="cut-lines">
        {lines.map((line, i) => (
          <CutLine
            key={lineKey(line)}
            line={line}
            colour={colourOf(line)}
            designs={designs}
            wordsOf={wordsOf}
            again={lines[i - 1]?.plant === line.plant}
          />
        ))}
      </div>
      <KnownStems order={order} />
    </div>
  )
}
