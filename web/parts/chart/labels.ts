/** Places for labels so that none lies on another. Written here: the label libraries on offer are larger than the chart. */
export interface Wish {
  key: string
  text: string
  /** The point that the label speaks of, along the edge. */
  at: number
  width: number
}

export interface Placed extends Wish {
  /** 0 is the row next to the edge. */
  row: number
  /** Left end of the text. */
  left: number
}

const APART = 10
const BEFORE = 4

/**
 * Rows of labels along an edge, each with a leader from its point. A label may slide as long as it stays over its point
 * and inside. No label lies on another; none lies on another's leader unless their points are too close for that.
 */
export function inRows(wishes: Wish[], from: number, to: number): Placed[] {
  const placed: Placed[] = []
  // From the left, each label keeps to the left of the next one's leader: they climb like stairs.
  for (const wish of [...wishes].sort((a, b) => a.at - b.at)) {
    const lefts = [0.5, 1, 0, 0.75, 0.25].map((share) => wish.at - share * wish.width)
    // The last resort for points that nearly meet: the text ends just before its own leader.
    const slides = [...lefts, wish.at - wish.width - BEFORE].map((left) => Math.min(Math.max(left, from), to - wish.width))
    const places = wishes.flatMap((_, row) => slides.map((left) => ({ ...wish, row, left })))
    const free = places.filter((one) => placed.every((other) => one.row !== other.row || apart(one, other)))
    // As many rows as labels: one of them is always free.
    const open = free.filter((one) => placed.every((other) => offLeader(one, other)))
    const later = wishes.filter((other) => other !== wish && other.at >= wish.at)
    placed.push(open.find((one) => later.every((other) => !covers(one, other.at))) ?? open[0] ?? free[0]!)
  }
  return placed
}

function apart(one: Placed, other: Placed): boolean {
  return one.left > other.left + other.width + APART || other.left > one.left + one.width + APART
}

function offLeader(one: Placed, other: Placed): boolean {
  const [low, high] = one.row < other.row ? [one, other] : [other, one]
  return one.row === other.row || !covers(low, high.at)
}

const covers = (one: Placed, at: number): boolean => at > one.left - 3 && at < one.left + one.width + 3

/**
 * All labels in one row, each as near to over its point as the others let it, with a leader that may slant; null where they do not
 * fit. In order of their points.
 */
export function inOneRow(wishes: Wish[], from: number, to: number): Placed[] | null {
  const order = [...wishes].sort((a, b) => a.at - b.at)
  const whole = order.reduce((sum, wish) => sum + wish.width + APART, -APART)
  if (whole > to - from) return null
  const lefts: number[] = []
  let least = from
  for (const [i, wish] of order.entries()) {
    lefts[i] = Math.max(wish.at - wish.width / 2, least)
    least = lefts[i]! + wish.width + APART
  }
  let most = to
  for (let i = order.length - 1; i >= 0; i--) {
    lefts[i] = Math.min(lefts[i]!, most - order[i]!.width)
    most = lefts[i]! - APART
  }
  return order.map((wish, i) => ({ ...wish, row: 0, left: lefts[i]! }))
}

/** Positions as near as can be to those wished for, at least `gap` apart, in the same order, between two ends. */
export function spread(wishes: number[], gap: number, from: number, to: number): number[] {
  const order = wishes.map((_, i) => i).sort((a, b) => wishes[a]! - wishes[b]!)
  const placed: number[] = []
  let least = from
  for (const i of order) {
    placed[i] = Math.max(wishes[i]!, least)
    least = placed[i]! + gap
  }
  let most = to
  for (const i of [...order].reverse()) {
    placed[i] = Math.min(placed[i]!, most)
    most = placed[i]! - gap
  }
  return placed
}
