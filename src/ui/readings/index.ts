export { PhoneReadings } from './phone-readings.tsx'
export { ReadingsColumn } from './readings-column.tsx'
