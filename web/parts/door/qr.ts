/** A QR code of a job's link, where a phone held over a screen or a sheet can read it. */
import { correction, generate } from 'lean-qr'

// 109 squares a side and the rim: over the width of a phone half a millimetre each, six of its own dots and more.
const ON_SCREEN = 23
/** 137 squares a side: on paper a square keeps its size, and the code grows. */
export const ON_PAPER = 30
/** The empty rim that the standard asks for (ISO/IEC 18004): four squares. */
const RIM = 4

export interface Qr {
  size: number
  /** The dark squares as one outline, a run of a row at a time. */
  path: string
}

/** Null where the text needs a finer code than scans well. */
export function qr(text: string, largest = ON_SCREEN): Qr | null {
  try {
    const code = generate(text, { minCorrectionLevel: correction.L, maxCorrectionLevel: correction.Q, maxVersion: largest })
    let path = ''
    for (let y = 0; y < code.size; y += 1)
      for (let x = 0; x < code.size; x += 1) {
        let run = 0
        while (code.get(x + run, y)) run += 1
        if (run) path += `M${x + RIM} ${y + RIM}h${run}v1h-${run}z`
        x += run
      }
    return { size: code.size + 2 * RIM, path }
  } catch {
    return null
  }
}
