import { formatMoney, packWords, toMain } from '../../stem-list/index.ts'
import { plantName, type WorkedEvent } from './use-worked-event.ts'

/** What to buy for all the designs together. */
export const OrderPanel = ({ worked: { order } }: { worked: WorkedEvent }) => (
  <table className="event-table">
    <thead>
      <tr>
        <th>plant</th>
        <th>pieces</th>
        <th>stems</th>
        <th>spare</th>
        <th>bunches</th>
        <th>left over</th>
        <th>cost</th>
      </tr>
    </thead>
    <tbody>
      {order.lines.map((line) => (
        <tr key={`${line.plant} ${line.colour}`}>
          <th scope="row">{plantName(line.plant)}</th>
          <td>{line.pieces}</td>
          <td>{line.stems}</td>
          <td>{line.spareStems}</td>
          <td>{packWords(line)}</td>
          <td>{line.leftover}</td>
          <td>{formatMoney(toMain(line.minor, order.currency), order.currency)}</td>
        </tr>
      ))}
    </tbody>
  </table>
)
