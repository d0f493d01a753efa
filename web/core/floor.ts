import type { Cause } from './boundary.ts'

// An empty function that returns a 128-bit vector: the youngest WebAssembly feature the runtime's floor implies.
const VECTORS = new Uint8Array([0, 97, 115, 109, 1, 0, 0, 0, 1, 5, 1, 96, 0, 1, 123, 3, 2, 1, 0, 10, 10, 1, 8, 0, 65, 0, 253, 15, 253, 98, 11])

/** Why this browser cannot run the core, or nothing. Features, not version strings: those lie. */
export function belowFloor(): Cause | undefined {
  if (typeof WebAssembly !== 'object' || typeof WebAssembly.compileStreaming !== 'function')
    return { reason: 'no-webassembly', detail: `WebAssembly is ${typeof WebAssembly}` }
  if (!WebAssembly.validate(VECTORS)) return { reason: 'old-browser', detail: 'WebAssembly without vectors' }
  return undefined
}
