import type { FieldPath } from '../../generated/schema.ts'
import { schema } from '../../store/schema.ts'
import { exists, Field } from './Field.tsx'
import './pairrow.css'

/** What a pair has in common, and what tells the two apart. */
const PAIRS: Record<string, [label: string, one: string, other: string]> = {
  'front.gap_left': ['Gap found', 'left', 'right'],
  'front.filled_left': ['Oil filled', 'left', 'right'],
  'front.built_gap_left': ['Gap built', 'left', 'right'],
  'front.filling_gap_left': ['Gap now', 'left', 'right'],
  'front.built_rate': ['Springs built', 'left', 'right'],
  'front.rate': ['Springs fitted', 'left', 'right'],
  'front.raised_volume': ['Oil in raises', '', 'by'],
  'rear.leverage': ['Leverage', '', 'falls by'],
  'rear.target_sag': ['Sag wanted', 'rider', 'free'],
  'front.alone_sag': ['Front, alone', 'down', 'up'],
  'front.aboard_sag': ['Front, rider', 'down', 'up'],
  'rear.alone_sag': ['Rear, alone', 'down', 'up'],
  'rear.aboard_sag': ['Rear, rider', 'down', 'up'],
  'front.alone_length': ['Front, alone', 'down', 'up'],
  'front.aboard_length': ['Front, rider', 'down', 'up'],
  'rear.alone_length': ['Rear, alone', 'down', 'up'],
  'rear.aboard_length': ['Rear, rider', 'down', 'up'],
  'conditions.luggage': ['Luggage', '', 'front'],
  'front.click_rebound_left': ['Rebound, left', 'found', 'built'],
  'front.click_rebound_right': ['Rebound, right', 'found', 'built'],
  'front.click_compression_left': ['Compression, left', 'found', 'built'],
  'front.click_compression_right': ['Compression, right', 'found', 'built'],
  'rear.click_rebound': ['Rebound', 'found', 'built'],
  'rear.click_compression': ['Compression', 'found', 'built'],
  'rear.click_high': ['High speed', 'found', 'built'],
  'front.ports': ['Piston ports', '', 'each'],
  'rear.ports': ['Piston ports', '', 'each'],
}

/** Rows of fields, those of a pair together. */
export function Rows({ rows }: { rows: FieldPath[][] }) {
  return (
    <div class="rows">
      {rows.map((row) => (
        <Row key={row.join()} row={row} />
      ))}
    </div>
  )
}

export function Row({ row }: { row: FieldPath[] }) {
  const [one, other] = row.filter(exists)
  if (!one) return null
  if (!other) return <Field path={one} />
  const [label, first, second] = PAIRS[one] ?? [schema.fields[one].label, '', '']
  return (
    <div class={one.includes('.click_') ? 'pair titled' : 'pair'} role="group" aria-label={label}>
      <span class="pair-name">{label}</span>
      <Field path={one} label={first} />
      <Field path={other} label={second} />
    </div>
  )
}

/** Partners by the first of the pair: where a fold lists both, they stand together too. */
const PARTNER: Partial<Record<FieldPath, FieldPath>> = {
  'front.gap_left': 'front.gap_right',
  'front.filled_left': 'front.filled_right',
  'front.filling_gap_left': 'front.filling_gap_right',
  'front.raised_volume': 'front.raised_height',
  'rear.leverage': 'rear.leverage_fall',
  'conditions.luggage': 'conditions.luggage_front_share',
  'front.click_rebound_left': 'front.set_rebound_left',
  'front.click_rebound_right': 'front.set_rebound_right',
  'front.click_compression_left': 'front.set_compression_left',
  'front.click_compression_right': 'front.set_compression_right',
  'rear.click_rebound': 'rear.set_rebound',
  'rear.click_compression': 'rear.set_compression',
  'rear.click_high': 'rear.set_high',
  'front.ports': 'front.port_diameter',
  'rear.ports': 'rear.port_diameter',
}

export function paired(fields: FieldPath[]): FieldPath[][] {
  const second = new Set(Object.values(PARTNER))
  return fields.flatMap((path) => {
    const partner = PARTNER[path]
    if (partner && fields.includes(partner)) return [[path, partner]]
    return second.has(path) && fields.some((one) => PARTNER[one] === path) ? [] : [[path]]
  })
}
