import type { Damping as Told, End } from '../../core/report.ts'
import { dampingOld, report } from '../../store/index.ts'
import { number, plusMinus } from '../figure/text.ts'
import '../figure/plaintable.css'
import './damping.css'

const of = (end: End): Told | undefined => report.value?.damping.find(({ axle }) => axle === end)

/** By how much damping must follow, first of all; the rest is one tap away. */
export function Damping({ end }: { end: End }) {
  const told = of(end)
  if (!told) return <p class="quiet">What the dampers have to do is being worked out.</p>
  const old = dampingOld.value.includes(end)
  return (
    <div class="damping" data-damping={told.problem ? 'problem' : 'told'} data-old={old}>
      {old && <p class="quiet">Of the entries before, being worked out again.</p>}
      {told.problem && <p class="attend">{told.problem}</p>}
      {told.follows.length > 0 && <Follows told={told} />}
      {told.words.length > 0 && <List words={told.words} />}
    </div>
  )
}

/** Factors, never clicks. */
function Follows({ told }: { told: Told }) {
  return (
    <table class="plain-table lined" data-table="follows">
      <caption>Damping wanted, times what it was</caption>
      <thead>
        <tr>
          <th scope="col">compared with</th>
          <th scope="col">rebound and compression</th>
          <th scope="col">rebound, full travel</th>
        </tr>
      </thead>
      <tbody>
        {told.follows.map(({ since, ride, full }) => (
          <tr key={since}>
            <th scope="row">{since}</th>
            <td>
              {number(ride)} <small>{plusMinus(ride)}</small>
            </td>
            <td>
              {number(full)} <small>{plusMinus(full)}</small>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}

/** What stands under the fields: shims group by group, and what a damper can hold along its stroke. */
export function DampingTables({ end }: { end: End }) {
  const told = of(end)
  if (!told) return null
  return (
    <div class="damping">
      {told.shims && (
        <section aria-label="Shims">
          <h3>Shims</h3>
          <p class={told.shims.problem ? 'attend' : ''}>{told.shims.problem || told.shims.words}</p>
          <List words={told.shims.groups} />
        </section>
      )}
      {told.limits.length > 0 && (
        <section aria-label="What a damper can hold">
          <h3>What a damper can hold</h3>
          <List words={told.limits} />
          {told.holds.map((one) => one.rows.length > 0 && <Holds key={one.label} one={one} />)}
        </section>
      )}
      {told.besides.length > 0 && (
        <section aria-label="At the wheel, and its oil">
          <h3>At the wheel, and its oil</h3>
          <List words={told.besides} />
        </section>
      )}
      <p class="quiet">{told.left_out}</p>
    </div>
  )
}

const List = ({ words }: { words: string[] }) => (
  <ul>
    {words.map((one) => (
      <li key={one}>{one}</li>
    ))}
  </ul>
)

function Holds({ one }: { one: Told['holds'][number] }) {
  const stated = one.rows.some((row) => row.stated_force)
  return (
    <table class="plain-table lined" data-table="holds">
      <caption>{one.label}, at most</caption>
      <thead>
        <tr>
          <th scope="col">stroke mm</th>
          <th scope="col">behind oil bar</th>
          <th scope="col">over piston bar</th>
          <th scope="col">on rod N</th>
          {stated && <th scope="col">with base valve N</th>}
        </tr>
      </thead>
      <tbody>
        {one.rows.map((row, at) => (
          <tr key={at}>
            <th scope="row">{number(row.stroke)}</th>
            <td>{number(row.behind)}</td>
            <td>{number(row.drop)}</td>
            <td>{number(row.force)}</td>
            {stated && <td>{row.stated_force ? number(row.stated_force) : ''}</td>}
          </tr>
        ))}
      </tbody>
    </table>
  )
}
