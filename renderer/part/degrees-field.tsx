/** A field for an angle in degrees: the sign may be typed along with it. */
import { FigureField, type FigureFieldProps } from './figure-field.tsx'

type WithoutSign<Props> = Props extends unknown ? Omit<Props, 'unit' | 'strip'> : never

export function DegreesField({ decimals = 1, ...field }: WithoutSign<FigureFieldProps>) {
  return <FigureField {...field} unit="°" decimals={decimals} strip={/°/u} />
}
