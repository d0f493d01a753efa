import { render } from 'preact'
import './look/tokens.css'
import './look/base.css'
import './look/layout.css'
import './store/theme.ts'
import { startCore } from './core/client.ts'
import { drawn, failed } from './core/first.ts'
import { markOnce } from './core/marks.ts'
import { watchSleep } from './core/sleep.ts'
import { mindTheKeyboard } from './look/keyboard.ts'
import { drawTheRest } from './look/whole.ts'
import { startOffline } from './offline/offline.ts'
import { Page } from './Page.tsx'
import { later } from './parts/shell/later.tsx'
import { followLinks } from './parts/shell/links.ts'
import { forgetAnswers, openFailed, report } from './store/index.ts'
import { catchUp, reopen } from './store/jobs.ts'
import { followAddress, go } from './store/place.ts'
import { linkInAddress, openLink } from './store/share.ts'
import { followStates } from './store/states.ts'
import { askAgain, connect } from './store/work.ts'

const core = startCore()
const offline = startOffline(core.settled)
connect(core)

// Before anything else reads the address.
const link = linkInAddress()

const Door = later(() => import('./parts/door/Door.tsx').then(({ Door }) => () => <Door core={core} offline={offline} />))

/** The last answer stands on the page before the core is up; then it is worked out again. */
async function begin(): Promise<void> {
  await reopen()
  followAddress()
  followStates()
  draw()
  drawn()
  requestAnimationFrame(() => {
    markOnce('first-screen')
    if (report.value) markOnce('saved-answer')
    setTimeout(drawTheRest)
  })
  await take(link)
}

/** A job that came in a link is opened at its answer. */
async function take(hash: string): Promise<void> {
  if (!hash) return
  openFailed.value = (await openLink(hash)).refused.join(' ')
  go('front', { top: true, side: 'answer' })
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

begin().catch(failed)
if (import.meta.hot) void import('./core/renew.ts').then(({ followEdits }) => followEdits(askAgain))
mindTheKeyboard()
followLinks()
watchSleep(askAgain)
// Another tab may have written while this one was out of sight.
document.addEventListener('visibilitychange', () => document.visibilityState === 'visible' && void catchUp())
addEventListener('hashchange', () => void take(linkInAddress()))
