import type { ComponentChildren } from 'preact'

/** A coil of so many turns between two heights. */
function Coil({ top, bottom, turns, left, right }: { top: number; bottom: number; turns: number; left: number; right: number }) {
  const pitch = (bottom - top) / turns
  const d = Array.from({ length: turns }, (_, i) => `M${left} ${top + i * pitch + pitch * 0.7}L${right} ${top + i * pitch}`).join('')
  return <path class="coil" d={d} />
}

/** Gas, as dots; the same two in a tile as in the chart. */
function Gas({ x, y, width, height }: { x: number; y: number; width: number; height: number }) {
  const dots = []
  for (let row = 0; row * 5 + 3 < height; row++) for (let column = 0; column * 5 + 3 < width; column++) dots.push(`M${x + column * 5 + (row % 2 ? 4 : 2)} ${y + row * 5 + 2}h.1`)
  return <path class="dots" d={dots.join('')} />
}

const tube = <path class="tube" d="M22 8h40v5h-40zM26 13v92h32v-92" />

/** Our own drawings of the kinds, by field and choice. */
export const DRAWINGS: Record<string, ComponentChildren> = {
  'front.air open': (
    <>
      <rect class="oil" x="26" y="50" width="32" height="55" />
      <Gas x={27} y={14} width={31} height={36} />
      {tube}
      <Coil top={16} bottom={74} turns={7} left={31} right={53} />
      <path d="M26 50h32M42 76v29" />
    </>
  ),
  'front.air sealed cartridge': (
    <>
      <rect class="oil" x="26" y="36" width="32" height="69" />
      <Gas x={27} y={14} width={31} height={22} />
      {tube}
      <rect class="cartridge" x="34" y="20" width="16" height="62" />
      <path d="M34 42h16M26 36h8M50 36h8M42 82v23" />
      <Gas x={35} y={22} width={15} height={18} />
    </>
  ),
  'front.air air leg': (
    <>
      <path class="tube" d="M40 3h4v5h-4z" />
      <Gas x={27} y={14} width={31} height={44} />
      <Gas x={27} y={64} width={31} height={18} />
      {tube}
      <path class="piston" d="M26 58h32v5h-32z" />
      <path d="M42 63v42" />
    </>
  ),
  'rear.shocks 1': <Shock x={42} />,
  'rear.shocks 2': (
    <>
      <Shock x={24} />
      <Shock x={60} />
    </>
  ),
}

function Shock({ x }: { x: number }) {
  return (
    <>
      <circle cx={x} cy="9" r="4" />
      <path d={`M${x} 13v10M${x - 14} 23h28M${x - 14} 85h28M${x} 85v10M${x - 5} 23v26h10v-26M${x} 49v36`} />
      <Coil top={26} bottom={84} turns={7} left={x - 13} right={x + 13} />
      <circle cx={x} cy="99" r="4" />
    </>
  )
}
