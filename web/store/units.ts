/** The units that a button offers at a field: those a bench would read it in. Every other accepted unit can still be typed. */
import { type FieldSchema, unitsOf } from './schema.ts'

const BENCH: Record<string, string[]> = {
  'length mm': ['mm', 'cm', 'in'],
  'length m': ['m', 'ft'],
  'mass kg': ['kg', 'lb'],
  'mass g': ['g'],
  'spring rate N/mm': ['N/mm', 'kgf/mm', 'lbf/in'],
  'force N': ['N', 'kgf', 'lbf'],
  'force kN': ['kN', 'N', 'lbf'],
  'volume ml': ['ml', 'US fl oz', 'imp fl oz'],
  'pressure bar': ['bar', 'psi', 'kPa'],
  'kinematic viscosity mm²/s': ['mm²/s', 'cSt'],
  'density kg/m³': ['kg/m³', 'g/ml'],
  'speed m/s': ['m/s', 'mm/s', 'in/s'],
  'temperature °C': ['°C', '°F'],
}

/** Stones are what people weigh in, not wheels. */
const PERSON = 150

export function offered(field: FieldSchema): string[] {
  const bench = BENCH[`${field.dimension} ${field.unit}`] ?? [field.unit]
  const more = field.dimension === 'mass' && field.unit === 'kg' && field.high >= PERSON && field.path.startsWith('rider.') ? ['st'] : []
  return [...bench, ...more].filter((unit) => unitsOf(field).includes(unit))
}
