/** What the build knows of the runtime's files; vite.config.ts reads it from the stage. */
declare module 'virtual:runtime' {
  const manifest: {
    version: string
    site: string
    lock: unknown
    files: Record<string, { bytes: number; sha256: string } | undefined>
  }
  export default manifest
}
