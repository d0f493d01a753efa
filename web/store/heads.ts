/** What the list of jobs shows of a job, taken from it and from its last answer. */
import type { End, Report } from '../core/report.ts'
import type { EndState, Head } from './database.ts'
import { entryAt, type JobDocument } from './document.ts'

export function headOf(id: string, job: JobDocument, report: Report | null): Head {
  return {
    id,
    at: Date.now(),
    name: job.name,
    owner: job.owner ?? '',
    date: job.date,
    use: String(entryAt(job, 'bike.use')?.value ?? ''),
    invented: job.invented,
    front: stateOf(job, report, 'front'),
    rear: stateOf(job, report, 'rear'),
    next: nextOf(report),
    removed: 0,
  }
}

function stateOf(job: JobDocument, report: Report | null, end: End): EndState {
  const entries = Object.entries(job[end] ?? {})
  if (entries.some(([key, entry]) => key.startsWith('built_') && entry !== null)) return 'built'
  const state = report?.ends?.[end]?.state
  return state === undefined ? 'open' : state === 'ok' ? 'worked out' : 'stuck'
}

/** What is refused comes first, then a service that is overdue, then the reading that would tell most. */
function nextOf(report: Report | null): string {
  if (!report) return ''
  for (const end of ['front', 'rear'] as const) {
    const problem = report.ends?.[end]?.problems?.[0]
    if (problem) return problem.message
  }
  const overdue = report.service?.ends?.find(({ left }) => left && left.value < 0)
  return overdue?.words ?? report.measure_first?.[0]?.words ?? dueOf(report)
}

/** The next service, once there is nothing more to measure. */
const dueOf = (report: Report) => report.service?.ends?.find(({ due }) => due)?.words ?? ''

/** A job by bike, owner, date and kind of riding: every word of the search stands in one of them. */
export function matches(head: Head, search: string): boolean {
  const words = [head.name, head.owner, head.date, head.use, head.next].join(' ').toLocaleLowerCase()
  return search
    .toLocaleLowerCase()
    .split(/\s+/)
    .every((word) => words.includes(word))
}
