/** The customer's path: what is asked, what was answered, where it stands, and what the core says of it. Kept on this device. */
import { computed, signal } from '@preact/signals'
import type { CoreReply } from '../core/boundary.ts'
import declared from '../generated/mybike.json'
import type { FieldPath, Use } from '../generated/schema.ts'
import { recalled, remember } from './remember.ts'
import { askCore } from './work.ts'

export interface Question {
  name: string
  path: FieldPath | ''
  /** In short. */
  label: string
  title: string
  words: string[]
  /** What the rider does, by how the rider is on the bike; "any" where that is all one. */
  you: Record<string, string>
  helper: string
  caution: string
  choices: { key: string; label: string }[]
  drawing: string
  next: string
  uses: string[]
  end: 'front' | 'rear'
  optional: boolean
}

type Reply = Extract<CoreReply, { kind: 'my bike' }>
export type MyBike = Reply['found']
export type Verdict = NonNullable<MyBike['verdict']>
export type Wrong = MyBike['problems'][number]

const QUESTIONS = declared.questions as unknown as Question[]
const RIDES = declared.rides as Record<Use, string>
const KEY = 'stanchion-mybike'
// A core that is still starting must not hold up the hand: what is wrong is said at the verdict too.
const PATIENCE = 1500

const NOTHING = { said: {} as Record<string, string>, units: {} as Record<string, string>, at: '', front: false }
const kept = { ...NOTHING, ...recalled(KEY, NOTHING) }

/** What was typed, by field. */
export const said = signal(kept.said)
/** The units last chosen, by dimension. */
export const units = signal(kept.units)
/** The name of the question that is open, or "verdict", or "send". */
export const at = signal(kept.at || QUESTIONS[0]!.name)
/** Whether the front is asked about too, after the rear's verdict. */
export const front = signal(kept.front)
/** What is wrong with what was just answered. */
export const wrong = signal<Wrong | null>(null)
export const reply = signal<Reply | null>(null)
/** Why the core says nothing, where it does not. */
export const silent = signal('')

const save = () => remember(KEY, { said: said.value, units: units.value, at: at.value, front: front.value })

/** How the rider is on the bike: standing, sitting, or sitting with all that it carries. */
export const rides = computed(() => RIDES[said.value['bike.use'] as Use] ?? 'sitting')
export const asked = computed(() => QUESTIONS.filter(({ uses, end }) => (uses.length === 0 || uses.includes(said.value['bike.use'] ?? '')) && (end === 'rear' || front.value)))
const namesOf = (end: 'front' | 'rear') => asked.value.filter((one) => one.end === end).map(({ name }) => name)
const steps = computed(() => [...namesOf('rear'), 'verdict', ...(front.value ? [...namesOf('front'), 'front verdict'] : []), 'send'])
/** The end that is asked or told about just now. */
export const end = computed(() => (question.value?.end === 'front' || at.value === 'front verdict' ? 'front' : 'rear'))
export const question = computed(() => asked.value.find(({ name }) => name === at.value))
const isReading = ({ path, drawing }: Question) => path !== '' && drawing !== ''

/** Where a question stands among its like. */
export function progress(of: Question): { word: string; number: number; all: Question[] } {
  const reading = isReading(of)
  const all = asked.value.filter((one) => one.path !== '' && one.end === of.end && isReading(one) === reading)
  return { word: reading ? 'Reading' : 'Question', number: all.indexOf(of) + 1, all }
}

export const isSaid = (path: string): boolean => (said.value[path] ?? '').trim() !== ''

export function say(path: string, text: string): void {
  said.value = { ...said.value, [path]: text }
  wrong.value = null
  reply.value = null
  save()
}

export function useUnit(dimension: string, unit: string): void {
  units.value = { ...units.value, [dimension]: unit }
  save()
}

/** Ask the core what can be said of all this; the last question counts. */
let latest = 0
export async function ask(): Promise<Reply | null> {
  const mine = ++latest
  const heard = await askCore({ kind: 'my bike', said: said.value })
  if (mine !== latest) return null
  silent.value = heard.kind === 'failure' ? heard.message : ''
  reply.value = heard.kind === 'my bike' ? heard : null
  return reply.value
}

/** Go on from a question, unless something is wrong with it. */
export async function onward(from: Question): Promise<void> {
  if (from.path && !from.optional && !isSaid(from.path)) return refuse(from.path, from.choices.length > 0 ? 'Choose one.' : 'Write what you read.')
  const heard = await Promise.race([ask(), new Promise<null>((done) => setTimeout(() => done(null), PATIENCE))])
  const problem = heard?.found.problems[0]
  if (problem) wrong.value = problem
  else go(1)
}

function refuse(path: FieldPath, message: string): void {
  wrong.value = { path, code: 'missing', message, limit: '', readings: [], way_out: '', end: 'rear' }
}

interface Stood {
  room?: string
  /** How many steps of this path lie behind in the history. */
  deep?: number
}

const deep = () => (history.state as Stood | null)?.deep ?? 0
const address = (name: string) => `#mybike?${name.replaceAll(' ', '-')}`

/** Open a question by its name. The browser's way back leads here again. */
export function open(name: string): void {
  if (name === at.value) return
  history.pushState({ room: 'mybike', deep: deep() + 1 }, '', address(name))
  arrive(name)
}

export function go(by: 1 | -1): void {
  const next = steps.value[steps.value.indexOf(at.value) + by]
  if (!next) return
  if (by === 1) return open(next)
  if (deep() > 0) return history.back()
  history.replaceState({ room: 'mybike' }, '', address(next))
  arrive(next)
}

/** Ask about the front too. */
export function askFront(): void {
  front.value = true
  open(namesOf('front')[0]!)
}

export const isFirst = computed(() => at.value === steps.value[0])

function arrive(name: string): void {
  wrong.value = null
  at.value = name
  save()
  scrollTo({ top: 0, behavior: 'instant' })
}

/** Follow the address while this path is open; returns how to stop. */
export function follow(): () => void {
  if (!steps.value.includes(at.value)) at.value = steps.value[0]!
  history.replaceState({ ...(history.state as Stood), room: 'mybike' }, '', address(at.value))
  const back = () => {
    const name = /^#mybike\?(.+)/.exec(location.hash)?.[1]?.replaceAll('-', ' ')
    if (name && steps.value.includes(name)) arrive(name)
  }
  addEventListener('popstate', back)
  return () => removeEventListener('popstate', back)
}

/** Clear every answer and begin anew. */
export function startAgain(): void {
  said.value = {}
  front.value = false
  reply.value = null
  latest += 1
  open(steps.value[0]!)
  save()
}
