import type { Report } from '../../core/report.ts'

/** Checks to tick on paper: when it goes together, and on the first ride. */
export function Lists({ report }: { report: Report }) {
  return (
    <>
      <div class="card-lists">
        <div>
          <h3>On reassembly</h3>
          <Checks words={report.reassembly} />
        </div>
        <div>
          <h3>First ride</h3>
          <Checks words={report.first_ride} />
        </div>
      </div>
      <p class="card-hand">
        Then: front free sag <span class="blank short" /> rider sag <span class="blank short" /> rear free sag <span class="blank short" /> rider sag <span class="blank short" /> mm
      </p>
    </>
  )
}

function Checks({ words }: { words: string[] }) {
  return (
    <ul class="card-checks">
      {words.map((check) => (
        <li key={check}>{check}</li>
      ))}
    </ul>
  )
}
