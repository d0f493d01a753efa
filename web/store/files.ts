/** Jobs out of this device and in again: as files, one job or all of them. What is opened is added, and replaces nothing. */
import { within, newest } from './database.ts'
import type { JobDocument } from './document.ts'
import { add, documentOf, jobs, list, open } from './jobs.ts'
import { same } from './merge.ts'
import { schema } from './schema.ts'
import { askCore } from './work.ts'

const SEVERAL = { format: 'stanchion-jobs', version: 1 }
// Of the longest file that can be read again some room is left for what stands around the jobs.
const ROOM = 0.9

const asText = (content: unknown) => `${JSON.stringify(content, null, 1)}\n`

/** A file name that every system takes. */
function fileName({ name, owner, date }: Pick<JobDocument, 'name' | 'owner' | 'date'>): string {
  const plain = [name || 'job', owner ?? '', date].join(' ').normalize('NFKD').replace(/[^\w]+/g, '-').replace(/^-|-$/g, '').toLowerCase()
  return `${plain || 'job'}.json`
}

const file = (name: string, content: unknown) => new File([asText(content)], name, { type: 'application/json' })

/** One job as a file, as it stands: the same that the command line reads. */
export async function exportOne(id: string): Promise<File | undefined> {
  const found = await documentOf(id)
  return found && fileOf(found)
}

export const fileOf = (found: JobDocument): File => file(fileName(found), found)

/** All jobs of this device as one file; more than one where they would be too long to be read again. */
export async function exportAll(): Promise<File[]> {
  const all: JobDocument[] = []
  for (const { id } of jobs.value) {
    const found = await documentOf(id)
    if (found) all.push(found)
  }
  const parts: JobDocument[][] = [[]]
  let length = 0
  for (const one of all) {
    const more = asText(one).length * 1.1
    if (length > 0 && length + more > schema.longest_file * ROOM) {
      parts.push([])
      length = 0
    }
    parts.at(-1)!.push(one)
    length += more
  }
  return parts.map((some, at) => file(`stanchion-jobs${parts.length > 1 ? `-${at + 1}` : ''}.json`, { ...SEVERAL, jobs: some }))
}

/** Hand files out; the browser puts them where it puts what is downloaded. */
export function save(...files: (File | undefined)[]): void {
  for (const one of files) {
    if (!one) continue
    const link = document.createElement('a')
    link.href = URL.createObjectURL(one)
    link.download = one.name
    link.click()
    setTimeout(() => URL.revokeObjectURL(link.href), 60_000)
  }
}

export interface Imported {
  /** How many jobs were added, or were here already; the first of them is open. */
  opened: number
  /** What is wrong with those that were not. */
  refused: string[]
}

/** Open a file of one job or several. The core reads it, as it does on the command line. */
export async function importFile(chosen: File): Promise<Imported> {
  // Before anything of it is read.
  if (chosen.size > schema.longest_file) return refusedFor(`This file is longer than ${schema.longest_file} bytes, so it is no job.`)
  try {
    // A byte-order mark and wrong letters are the core's to judge.
    const text = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(await chosen.arrayBuffer())
    return await importText(text)
  } catch {
    return refusedFor('This file is not JSON: it is not UTF-8 text.')
  }
}

const refusedFor = (...refused: string[]): Imported => ({ opened: 0, refused })

/** Open what a file or a link holds. A job that is here already, letter by letter, is opened and not added again. */
export async function importText(text: string): Promise<Imported> {
  const reply = await askCore({ kind: 'open', text })
  if (reply.kind === 'failure') return refusedFor(reply.message)
  if (reply.kind !== 'jobs') return refusedFor('')
  const here = await allHere()
  const ids: string[] = []
  for (const found of reply.jobs) {
    ids.push(here.find(([, known]) => same(known, found))?.[0] ?? (await add(found)).id)
  }
  await list()
  const wrong = await open(ids[0]!)
  return { opened: ids.length, refused: [...reply.refused, ...(wrong ? [wrong] : [])] }
}

async function allHere(): Promise<[string, JobDocument][]> {
  await list()
  return within(async (db) => {
    const found = await Promise.all(jobs.value.map(({ id }) => newest(db, id)))
    return found.flatMap((row): [string, JobDocument][] => (row ? [[row.id, row.job]] : []))
  }).catch(() => [])
}
