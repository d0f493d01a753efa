/** The core's report, as the page reads it: the types are the core's own (calc/report/types), made into TypeScript by the build. */
import type { EndNone, EndOk, EndRefused, PartReport } from '../generated/report.ts'

export type {
  Attitude,
  Candidate,
  Check,
  Curve,
  DampingOfEnd as Damping,
  DrawnLeg,
  EndNone,
  EndOk,
  EndRefused,
  FieldState,
  FiguresReport as Figures,
  FoundSetupReport as FoundSetup,
  HowSure as Sure,
  LegEvent,
  LegPart,
  LegSpace,
  LegSpring,
  LinkageView,
  MotionReport as Motion,
  NextReading,
  OfferOption,
  OfferReport,
  OilReport,
  OptionBetween,
  OptionDone,
  OptionEnd,
  OptionsReport,
  PartReport,
  Problem,
  PushReport,
  PushRival,
  Quantity,
  Report,
  Section,
  SagTold,
  SetupReport as Setup,
  StateLooked,
  StatesLooked,
  StatesReport,
  UsualRange as Usual,
  Window,
} from '../generated/report.ts'

export type End = PartReport['axle']
export type EndReport = EndOk | EndNone | EndRefused
export type BrakeDive = NonNullable<EndOk['braking']>
export type Place = EndOk['conditions'][number]
