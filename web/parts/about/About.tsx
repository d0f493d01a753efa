import { VERSION } from '../../generated/version.ts'

/** Which version this is, and whose work it is made of; both are in the offline copy. */
export function About() {
  return (
    <p class="quiet">
      Stanchion {VERSION}, free software. <a href="./notices.txt">Licences and whose work this is</a>
    </p>
  )
}
