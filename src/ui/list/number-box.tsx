import { Button, Group, Input, Label, NumberField } from 'react-aria-components'

interface Props {
  label: string
  /** Read to those who don't see the row; the visible label comes first in it. */
  name?: string
  value: number
  onChange: (value: number) => void
  least?: number
  most?: number
  step?: number
  digits?: number
  hideLabel?: boolean
}

/** A number with − and +: one press or one typed value is one step of the history. */
export const NumberBox = ({ label, name, value, onChange, least, most, step = 1, digits = 0, hideLabel }: Props) => (
  <NumberField
    className="number-box"
    value={value}
    onChange={(v) => {
      if (Number.isFinite(v) && v !== value) onChange(v)
    }}
    {...(least === undefined ? {} : { minValue: least })}
    {...(most === undefined ? {} : { maxValue: most })}
    step={step}
    formatOptions={{ maximumFractionDigits: digits, useGrouping: false }}
    aria-label={name ?? label}
  >
    {hideLabel ? null : <Label>{label}</Label>}
    <Group className="number-box-group">
      <Button slot="decrement">−</Button>
      <Input />
      <Button slot="increment">+</Button>
    </Group>
  </NumberField>
)
