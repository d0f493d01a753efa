import { report } from '../../store/index.ts'
import './caution.css'

/** Cautions by key, placed where the hand is about to be. Their words are the core's. */
export function Caution({ keys }: { keys: readonly string[] }) {
  const found = report.value?.cautions.filter((caution) => keys.includes(caution.key)) ?? []
  return (
    <>
      {found.map(({ key, title, words }) => (
        <p key={key} class="caution" role="note">
          <strong>{title}</strong> {words}
        </p>
      ))}
    </>
  )
}
