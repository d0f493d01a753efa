/** The same three marks wherever a sag or the end of travel stands. */
export type MarkKind = 'free' | 'rider' | 'end'

/** A mark at a point of a drawing; the end's bar lies across the travel's direction. */
export function Mark({ kind, x, y, lying = false }: { kind: MarkKind; x: number; y: number; lying?: boolean }) {
  const name = `mark mark-${kind}`
  if (kind !== 'end') return <circle class={name} data-mark={kind} cx={x} cy={y} r={6} />
  const [dx, dy] = lying ? [8, 0] : [0, 8]
  return <line class={name} data-mark={kind} x1={x - dx} y1={y - dy} x2={x + dx} y2={y + dy} />
}
