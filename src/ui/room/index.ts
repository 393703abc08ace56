export { RoomCells } from './room-cells.tsx'
