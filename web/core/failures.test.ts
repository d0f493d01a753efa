import { afterEach, expect, test, vi } from 'vitest'
import { VERSION } from '../generated/version.ts'
import { inWords } from './failures.ts'

afterEach(() => vi.unstubAllGlobals())

test('the failure report opens with the version, and holds what failed', () => {
  vi.stubGlobal('location', { origin: 'https://bench.example', pathname: '/' })
  vi.stubGlobal('isSecureContext', true)
  const { report } = inWords({ reason: 'damaged-file', file: 'core.pack.wasm', detail: 'sha256 differs' })
  expect(VERSION).toMatch(/^\d+\.\d+\.\d+$/)
  expect(report.split('\n')[0]).toMatch(new RegExp(`^Stanchion ${VERSION.replaceAll('.', '\\.')}, \\d{4}-`))
  expect(report).toContain('core.pack.wasm')
})
