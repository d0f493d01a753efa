import { render } from 'preact'
import './look/tokens.css'
import './look/base.css'
import './look/layout.css'
import './store/theme.ts'
import { startCore } from './core/client.ts'
import { markOnce } from './core/marks.ts'
import { mindTheKeyboard } from './look/keyboard.ts'
import { drawTheRest } from './look/whole.ts'
import { startOffline } from './offline/offline.ts'
import { Page } from './Page.tsx'
import { followLinks } from './parts/shell/links.ts'
import { later } from './parts/shell/later.tsx'
import { connect, reopen, save, workOut } from './store/actions.ts'
import { forgetAnswers, report } from './store/index.ts'
import { followAddress } from './store/place.ts'

const core = startCore()
const offline = startOffline(core.settled)
connect(core)

const Door = later(() => import('./parts/door/Door.tsx').then(({ Door }) => () => <Door core={core} offline={offline} />))

/** The last answer stands on the page before the core is up; then it is worked out again. */
async function begin(): Promise<void> {
  await reopen()
  followAddress()
  draw()
  requestAnimationFrame(() => {
    markOnce('first-screen')
    if (report.value) markOnce('saved-answer')
    setTimeout(drawTheRest)
  })
  void workOut()
}

function draw(): void {
  const place = document.getElementById('page')!
  place.replaceChildren()
  try {
    render(<Page core={core} offline={offline} Door={Door} />, place)
  } catch (error) {
    if (!report.value) throw error
    // An answer kept by another version of this page may not be readable any more. The job is: it is worked out again.
    forgetAnswers()
    render(null, place)
    draw()
  }
}

void begin()
mindTheKeyboard()
followLinks()
// A phone may put the page away without another word.
document.addEventListener('visibilitychange', () => document.visibilityState === 'hidden' && save())
