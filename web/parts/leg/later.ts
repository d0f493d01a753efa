/** Leg and chart come with a script of their own: the answer stands before its picture. */
import { later } from '../shell/later.tsx'

export const LaterLeg = later(() => import('./Leg.tsx').then(({ Leg }) => Leg))
export const LaterChart = later(() => import('../chart/ForceChart.tsx').then(({ ForceChart }) => ForceChart))
