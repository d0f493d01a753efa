/** Checks of the open job that were made: the day by the check's key, as the job file keeps it. */
import { computed } from '@preact/signals'
import { job } from './index.ts'

const made = computed(() => job.value.work?.ticks ?? {})

/** The day on which a check was made; empty where it was not yet. */
export const madeOn = (key: string): string => made.value[key] ?? ''

/** How many of some checks were made. */
export const howManyMade = (checks: readonly { key: string }[]): number => checks.filter(({ key }) => madeOn(key) !== '').length
