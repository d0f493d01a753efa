/** A job handed on: its link, a QR code of it where that scans well, and the system's share sheet. */
import type { JobDocument } from './document.ts'
import { fileOf, importText, type Imported } from './files.ts'
import { documentOf } from './jobs.ts'
import { isLink, pack, unpack } from './link.ts'

export interface Shared {
  link: string
  /** The link as a QR code would hold it. */
  forQr: string
}

const here = () => location.href.replace(/#.*$/, '')

/** A job's link. Whoever has it has the whole job; nothing is kept anywhere else. */
export async function shareLink(id: string): Promise<Shared | undefined> {
  const found = await documentOf(id)
  return found && linkOf(found)
}

export async function linkOf(found: JobDocument): Promise<Shared> {
  const { letters, digits } = await pack(found)
  return { link: here() + letters, forQr: here() + digits }
}

/** Offer a job to the system's share sheet, as a file where it takes files. False where there is none, or it was closed. */
export async function shareBySystem(id: string): Promise<boolean> {
  const found = await documentOf(id)
  return found ? shareDocument(found) : false
}

export async function shareDocument(found: JobDocument): Promise<boolean> {
  const one = fileOf(found)
  const shared = await linkOf(found)
  if (!navigator.share) return false
  const what = navigator.canShare?.({ files: [one] }) ? { files: [one], title: one.name } : { url: shared.link, title: one.name }
  return navigator.share(what).then(
    () => true,
    () => false,
  )
}

const KEY = 'stanchion-link'

/** Take the job out of the address, which is then an ordinary one again. A link that was not opened yet is not lost by a reload. */
export function linkInAddress(): string {
  const { hash } = location
  try {
    if (isLink(hash)) sessionStorage.setItem(KEY, hash)
    else return sessionStorage.getItem(KEY) ?? ''
  } catch {
    // Storage is switched off: the link lasts as long as the page.
  }
  if (!isLink(hash)) return ''
  history.replaceState(history.state, '', here())
  return hash
}

/** Open the job that a link holds. */
export async function openLink(hash: string): Promise<Imported> {
  const done = await unpack(hash).then(importText, (error: Error) => ({ opened: 0, refused: [error.message] }))
  try {
    sessionStorage.removeItem(KEY)
  } catch {
    // It was not kept.
  }
  return done
}
