import { useSignal } from '@preact/signals'
import { compare, type Comparison, type Head } from '../../store/jobs.ts'

const visitName = ({ name, owner, date }: Head) => [name || 'No name', owner, date].filter(Boolean).join(', ')

/** Two visits side by side: what was entered, recommended and ridden differently. */
export function Compare({ head, others }: { head: Head; others: Head[] }) {
  const found = useSignal<Comparison | string>('')
  const against = useSignal<Head | undefined>(undefined)
  // Visits of the same bike come first.
  const sorted = [...others].sort((a, b) => Number(b.name === head.name) - Number(a.name === head.name))
  const choose = async (id: string) => {
    against.value = others.find((other) => other.id === id)
    if (!against.value) return
    const [before, after] = inOrder(head, against.value)
    found.value = await compare(before.id, after.id)
  }
  return (
    <div class="compare">
      <label class="ask">
        <span>Compare with</span>
        <select value={against.value?.id ?? ''} onChange={(event) => void choose(event.currentTarget.value)}>
          <option value="" disabled>
            Choose
          </option>
          {sorted.map((other) => (
            <option key={other.id} value={other.id}>
              {visitName(other)}
            </option>
          ))}
        </select>
      </label>
      {typeof found.value === 'string' ? (
        <p class="attend" role="alert">
          {found.value}
        </p>
      ) : (
        against.value && <Table found={found.value} visits={inOrder(head, against.value)} />
      )}
    </div>
  )
}

/** The earlier visit first. */
const inOrder = (one: Head, other: Head): [Head, Head] => (one.date <= other.date ? [one, other] : [other, one])

function Table({ found, visits }: { found: Comparison; visits: [Head, Head] }) {
  const rows = [...found.entries.map((row) => ({ ...row, of: 'Entered' })), ...found.results.map((row) => ({ ...row, of: 'Recommended' })), ...found.rides.map((row) => ({ ...row, of: 'Ridden' }))]
  if (rows.length === 0) return <p role="status">Both visits say the same.</p>
  return (
    <table>
      <caption>{visits.map(visitName).join(' and ')}</caption>
      <thead>
        <tr>
          <th scope="col">What</th>
          {visits.map(({ date }, at) => (
            <th scope="col" key={at}>
              {date || (at ? 'later' : 'earlier')}
            </th>
          ))}
        </tr>
      </thead>
      {['Entered', 'Recommended', 'Ridden'].map((of) => (
        <tbody key={of}>
          {rows
            .filter((row) => row.of === of)
            .map(({ label, before, after }) => (
              <tr key={label}>
                <th scope="row">{label}</th>
                <td>{before || '–'}</td>
                <td>{after || '–'}</td>
              </tr>
            ))}
        </tbody>
      ))}
    </table>
  )
}
