/** The job document as it passes the boundary: a job file's content. */
export type { JobDocument } from '../store/document.ts'
