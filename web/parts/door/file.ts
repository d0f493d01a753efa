import type { JobDocument } from '../../store/document.ts'

/** A file name that every system takes. */
export function fileName({ name, date }: JobDocument): string {
  const plain = [name || 'job', date].join(' ').normalize('NFKD').replace(/[^\w]+/g, '-').replace(/^-|-$/g, '').toLowerCase()
  return `${plain || 'job'}.json`
}

/** Hand the job out as a file, as it stands: the same file that the command line reads. */
export function saveFile(job: JobDocument): void {
  const link = document.createElement('a')
  link.href = URL.createObjectURL(new Blob([`${JSON.stringify(job, null, 2)}\n`], { type: 'application/json' }))
  link.download = fileName(job)
  link.click()
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000)
}
