/** Leg and chart come with a script of their own, when a place that shows them is first drawn. */
import { later } from '../figure/later.tsx'

export const LaterLeg = later('The drawing of the leg', () => import('./Leg.tsx').then(({ Leg }) => Leg))
export const LaterChart = later('The chart', () => import('../chart/ForceChart.tsx').then(({ ForceChart }) => ForceChart))
