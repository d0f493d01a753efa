const FACE = "16px 'Atkinson Hyperlegible Next', system-ui, sans-serif"
let pen: CanvasRenderingContext2D | null | undefined

/** The width of a text at 16 px and a weight. */
export type Measure = (text: string, weight?: number) => number

/** The width of a label in px; the chart's text is 16 px at any zoom of its own drawing. */
export function textWidth(text: string, weight = 430): number {
  pen ??= document.createElement('canvas').getContext('2d')
  if (!pen) return text.length * 8.6
  pen.font = `${weight} ${FACE}`
  return pen.measureText(text).width + 2
}
