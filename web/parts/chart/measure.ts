const FACE = "'Atkinson Hyperlegible Next', system-ui, sans-serif"
let pen: CanvasRenderingContext2D | null | undefined

/** The width of a text in px at a weight. */
export type Measure = (text: string, weight?: number) => number

/** Measured at the size that the theme gives the page: sun mode is larger. */
export function textWidth(text: string, weight = 430): number {
  pen ??= document.createElement('canvas').getContext('2d')
  if (!pen) return text.length * 8.6
  pen.font = `${weight} ${getComputedStyle(document.documentElement).fontSize} ${FACE}`
  return pen.measureText(text).width + 2
}
