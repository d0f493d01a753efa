import type { End } from '../../core/report.ts'
import { Lined } from './Reading.tsx'
import { type Cell, type Row, sharedCase } from './rows.ts'

const ENDS: End[] = ['front', 'rear']

/** Both ends, as found and as left, or as a draft. What a case says of one end only stands over that end's columns. */
export function SetupTable({ rows, heads }: { rows: Record<End, Row[]>; heads: Record<End, string> }) {
  const ends = ENDS.filter((end) => rows[end].length > 0)
  const names = [...new Set([...rows.front, ...rows.rear].map((row) => row.name))]
  const lines = names.map((name) => lineOf(name, rows))
  const only = (end: End) => [...new Set(lines.map((line) => line[end]).filter(Boolean))].join(', ')
  return (
    <div class="table-room" role="region" tabIndex={0} aria-label="Setups">
      <table class="card-table">
        <thead>
          <tr>
            <td rowSpan={2} />
            {ends.map((end) => (
              <th key={end} scope="colgroup" colSpan={2}>
                {end === 'front' ? 'Front' : 'Rear'}
                <small>{ends.length > 1 ? only(end) : ''}</small>
              </th>
            ))}
            <td rowSpan={2} />
          </tr>
          <tr>
            {ends.map((end) => (
              <Heads key={end} left={heads[end]} />
            ))}
          </tr>
        </thead>
        <tbody>
          {lines.map(({ name, unit, shared, of }) => (
            <tr key={name}>
              <th scope="row">
                {name} <small>{shared}</small>
              </th>
              {ends.map((end) => (
                <Cells key={end} row={of[end]} />
              ))}
              <td class="unit">{unit}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}

function Heads({ left }: { left: string }) {
  return (
    <>
      <th scope="col">as found</th>
      <th scope="col">{left}</th>
    </>
  )
}

function Cells({ row }: { row: Row | undefined }) {
  return (
    <>
      <Figures cells={row?.found ?? []} />
      <Figures cells={row?.left ?? []} left />
    </>
  )
}

function Figures({ cells, left = false }: { cells: Cell[]; left?: boolean }) {
  return (
    <td class={left ? 'as-left' : ''}>
      {cells.map(({ text, band, origin, word, note }, i) => (
        <span key={i}>
          {i > 0 && ' / '}
          {word} <Lined text={text} origin={origin} word={cells[i + 1]?.origin !== origin} /> {band}
          {note && <small>{note}</small>}
        </span>
      ))}
    </td>
  )
}

function lineOf(name: string, rows: Record<End, Row[]>) {
  const [front, rear] = ENDS.map((end) => rows[end].find((row) => row.name === name))
  const any = (front ?? rear)!
  const split = front && rear ? sharedCase(short(front, rows.front), short(rear, rows.rear)) : { shared: short(any, front ? rows.front : rows.rear), front: '', rear: '' }
  return { name, unit: any.unit, of: { front, rear }, ...split }
}

/** The case of riding is told once, at the frequency. */
function short(row: Row, rows: Row[]): string {
  const riding = rows.find((one) => one.name === 'Ride frequency')
  return riding && row !== riding ? row.case.replace(riding.case, 'as for frequency') : row.case
}
