import { type Theme, theme, THEMES } from '../../store/theme.ts'

/** Light, dark or sun. */
export function Look() {
  return (
    <fieldset class="look">
      <legend>Screen</legend>
      {(Object.entries(THEMES) as [Theme, string][]).map(([key, label]) => (
        <label key={key}>
          <input type="radio" name="look" checked={theme.value === key} onChange={() => (theme.value = key)} />
          {label}
        </label>
      ))}
    </fieldset>
  )
}
