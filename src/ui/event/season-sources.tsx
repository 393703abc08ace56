import { type Half, seasonSource, seasonText } from '../../catalogue/index.ts'
import { plantName } from '../../work-plan/index.ts'

/** Where the months of these plants (ids) come from, one press away. */
export const SeasonSources = ({ plants, half }: { plants: readonly string[]; half: Half }) => (
  <details className="order-fold">
    <summary>In which months these are to be had, and who says so</summary>
    <p>
      To be had is the longest that a source gives, from fields, from under glass or from afar; most of it, when growers
      and the trade name their peak, or the months of the source that gives fewest (ours).
    </p>
    <table className="event-table">
      <thead>
        <tr>
          <th scope="col">plant</th>
          <th scope="col" className="swap-words">
            months, in the {half}
          </th>
          <th scope="col" className="swap-words">
            from
          </th>
        </tr>
      </thead>
      <tbody>
        {plants.map((id) => (
          <tr key={id}>
            <th scope="row">{plantName(id)}</th>
            <td className="swap-words">{seasonText(id, half) ?? 'not known'}</td>
            <td className="swap-words">{seasonSource(id, half)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  </details>
)
