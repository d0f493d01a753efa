/** The floor plan of the fields: which place shows each, in a row of its own or in which fold. Every field has one home. */
import type { FieldPath } from '../generated/schema.ts'
import type { PlaceName } from './place.ts'

export interface FoldPlan {
  name: string
  title: string
  fields: FieldPath[]
  /** What is told at the right while it is closed. */
  says: FieldPath[]
}

interface PlacePlan {
  /** Rows that a place wants on its open part, in order; two fields that belong together share one. */
  rows: FieldPath[][]
  /** How many of these are shown, the first that apply; the others stand in their folds. */
  most: number
  /** A field that brings a fold of its own: where it applies, a row less is shown. */
  fewerWith?: FieldPath
  /** Fields drawn in a way of their own. */
  also?: FieldPath[]
  folds: FoldPlan[]
}

const both = <T extends string>(prefix: string, keys: T[]) => keys.map((key) => `${prefix}.${key}` as FieldPath)
const front = (...keys: string[]) => both('front', keys)
const rear = (...keys: string[]) => both('rear', keys)

/** Read while a leg is filled: beside what is built, and at the answer in the fold of the oil. */
export const READ_NOW = front('filling_gap_left', 'filling_gap_right')

const COIL = ['rate_from', 'rate', 'tester', 'tester_error', 'wire', 'coil_diameter', 'coils', 'coil_ends', 'grade', 'shear_modulus']
const SECOND = ['second_rate', 'second_room', 'second_later', 'second_free', 'second_solid', 'table', 'table_error']
const STOPS = ['topout', 'topout_rate', 'rubber', 'rubber_length', 'rubber_rate', 'rubber_table']
const NEW = ['new_spring', 'new_free', 'new_solid', 'new_outside', 'new_inside', 'spring_bore', 'spring_core']

/** Adjusters as found and as built. */
const CLICKED = (...keys: string[]) => keys.flatMap((key) => [`click_${key}`, `set_${key}`])
const DAMPING = ['damper_piston', 'shaft_speed', 'base_drop', 'vapour', 'ports', 'port_diameter', 'rebound_force', 'compression_force', 'shims', 'set_shims', 'shim_clamp']

export const PLAN: Record<PlaceName, PlacePlan> = {
  bike: {
    rows: [['bike.use'], ['rider.mass'], ['bike.rear_axle', 'bike.front_axle'], ['rider.rear_axle', 'rider.front_axle']],
    most: 4,
    also: ['front.air', 'rear.shocks'],
    folds: [
      { name: 'scales', title: 'On the scales', fields: ['rider.posture'], says: ['rider.posture'] },
      { name: 'standard', title: 'Set up for a rider of', fields: ['standard.rider'], says: ['standard.rider'] },
      {
        name: 'carrying',
        title: 'Also carrying',
        fields: ['bike.carries', 'rider.passenger', 'rider.passenger_front_share', 'rider.luggage', 'rider.luggage_front_share'],
        says: ['bike.carries'],
      },
      {
        name: 'estimated',
        title: 'Without axle scales',
        fields: ['bike.mass', 'bike.front_share', 'rider.front_share_sitting', 'rider.front_share_standing'],
        says: ['bike.mass'],
      },
      {
        name: 'frame',
        title: 'Frame and braking',
        fields: ['bike.rake', 'bike.wheelbase', 'bike.centre_height', 'bike.braking', 'bike.front_braking'],
        says: ['bike.rake', 'bike.wheelbase'],
      },
    ],
  },
  front: {
    rows: [
      front('air_pressure'),
      front('balance_pressure'),
      front('cartridge_state'),
      front('rate', 'rate_right'),
      ['standard.fork_springs'],
      front('preload'),
      front('gap_left', 'gap_right'),
      front('filled_left', 'filled_right'),
      front('raised_volume', 'raised_height'),
      front('target_sag'),
      front('unsprung'),
    ],
    most: 6,
    fewerWith: 'front.cartridge_state',
    folds: [
      {
        name: 'springs',
        title: 'Springs',
        fields: front('springs_in', 'spring_kind', ...COIL, 'rate_right', ...SECOND, 'preload_from', 'preload', 'free_length', 'solid_length', 'spacers', 'space', 'pitch', ...STOPS, ...NEW),
        says: front('spring_kind', 'springs_in'),
      },
      {
        name: 'air',
        title: 'Air spring',
        fields: front(
          'air_in', 'air_coil', 'air_pressure', 'pump_loss', 'air_piston', 'air_volume', 'air_filled', 'balance', 'balance_fill', 'balance_volume', 'balance_rod',
          'balance_port', 'balance_pressure', 'second', 'second_volume', 'second_pressure',
        ),
        says: front('air_in', 'air_piston'),
      },
      {
        name: 'cartridge',
        title: 'Cartridge',
        fields: front(
          'cartridge_state', 'cartridge_fill', 'charge_by', 'cartridge_charge', 'charge_force', 'cartridge_gas', 'cartridge_body', 'cartridge_oil', 'cartridge_piston',
          'piston_spring', 'piston_back', 'piston_stop', 'piston_bleed', 'piston_front', 'leak', 'leak_bled', 'joined_stroke', 'oil_moved', 'bled_since',
        ),
        says: front('cartridge_fill'),
      },
      {
        name: 'oil',
        title: 'Oil and air',
        fields: [
          ...READ_NOW,
          ...front(
            'gap_from', 'gap_left', 'gap_right', 'gap_read', 'gap_state', 'filled_left', 'filled_right', 'filled_kept', 'brim_volume', 'area_by', 'raised_volume',
            'raised_height', 'brim_gap', 'brim_poured', 'oil_volume', 'cap_volume', 'spring_steel', 'spring_mass', 'spacer_volume', 'spacer_length', 'washers_volume', 'rod_volume',
          ),
          'place.bled_altitude', 'place.ridden_altitude', 'place.bled_pressure', 'place.ridden_pressure', 'place.bled_temperature', 'place.ridden_temperature',
          'place.bled_stroke', 'place.exponent',
          'oil.viscosity_40', 'oil.viscosity_100', 'oil.second_40', 'oil.second_100', 'oil.second_share', 'oil.density',
        ],
        says: ['place.bled_altitude', 'front.cap_volume'],
      },
      {
        name: 'leg',
        title: 'Leg',
        fields: front('layout', 'travel', 'seal_diameter', 'collapsed_stroke', 'wall', 'outer_bore', 'outer_depth', 'tube_metal', 'damper_rod', 'unsprung', 'friction'),
        says: front('layout', 'seal_diameter'),
      },
      {
        name: 'push',
        title: 'Bench push',
        fields: front('push_points', 'push_correct', 'push_read', 'push_spring', 'push_bled', 'push_leg', 'push_gap', 'push_friction', 'push_error', 'push_stroke_error', 'push_scale'),
        says: front('push_read'),
      },
      {
        name: 'damping',
        title: 'Damping',
        fields: front(...CLICKED('rebound_left', 'rebound_right', 'compression_left', 'compression_right'), 'damping_rod', 'damps', ...DAMPING),
        says: front('damps'),
      },
      {
        name: 'limits',
        title: 'Targets and standard',
        fields: [
          ...front(
            'target_sag', 'sag_within', 'target_frequency', 'target_free_sag', 'end_target', 'end_multiple', 'end_force', 'end_energy', 'air_end', 'buy', 'step', 'stock', 'preload_min', 'preload_max', 'gap_min', 'gap_max', 'air_step',
            'air_most',
          ),
          'standard.fork_springs', 'standard.fork_rate', 'standard.fork_preload', 'standard.gap', 'standard.air_pressure',
        ],
        says: ['front.buy', 'standard.fork_rate'],
      },
    ],
  },
  rear: {
    rows: [
      rear('rate'),
      ['standard.shock_spring'],
      rear('preload'),
      rear('leverage', 'leverage_fall'),
      rear('pairs'),
      rear('travel'),
      rear('target_sag', 'target_free_sag'),
      rear('unsprung'),
    ],
    most: 6,
    folds: [
      {
        name: 'springs',
        title: 'Spring',
        fields: rear('spring_kind', ...COIL, ...SECOND, 'preload_from', 'preload', 'installed_length', 'free_length', 'solid_length', 'pitch', 'thread_left', ...STOPS, ...NEW),
        says: rear('spring_kind'),
      },
      {
        name: 'linkage',
        title: 'Linkage',
        fields: rear(
          'motion_from', 'leverage', 'leverage_fall', 'pairs', 'linkage', 'points_at', 'axle_x', 'axle_z', 'shock_top_x', 'shock_top_z', 'shock_foot_x', 'shock_foot_z',
          'rocker_on', 'rocker_x', 'rocker_z', 'rocker_rod_x', 'rocker_rod_z', 'rocker_shock_x', 'rocker_shock_z', 'rod_x', 'rod_z',
        ),
        says: rear('motion_from'),
      },
      {
        name: 'shock',
        title: 'Shock and its gas',
        fields: rear('rod_diameter', 'charge', 'gas_volume', 'friction'),
        says: rear('charge', 'rod_diameter'),
      },
      {
        name: 'wheel',
        title: 'Wheel and swingarm',
        fields: rear('travel', 'unsprung_from', 'unsprung', 'wheel_mass', 'swingarm_mass', 'swingarm_length', 'swingarm_balance'),
        says: rear('unsprung'),
      },
      {
        name: 'damping',
        title: 'Damping',
        fields: rear(...CLICKED('rebound', 'compression', 'high'), ...DAMPING),
        says: rear('damper_piston'),
      },
      {
        name: 'limits',
        title: 'Targets and standard',
        fields: [
          ...rear('target_sag', 'sag_within', 'target_frequency', 'target_free_sag', 'buy', 'step', 'stock', 'preload_min', 'preload_max'),
          'standard.shock_spring', 'standard.shock_rate', 'standard.shock_preload',
        ],
        says: ['rear.buy', 'standard.shock_rate'],
      },
    ],
  },
  check: {
    rows: (['front', 'rear'] as const).flatMap((end) => [
      both(end, ['hanging_length']),
      both(end, ['alone_sag', 'alone_again_sag']),
      both(end, ['alone_length', 'alone_again_length']),
      both(end, ['aboard_sag', 'aboard_again_sag']),
      both(end, ['aboard_length', 'aboard_again_length']),
    ]),
    most: 6,
    folds: [
      { name: 'reading', title: 'How sags are read', fields: ['bike.sags_of', 'front.sags_read', 'rear.sags_read', 'bike.sags_correct'], says: ['bike.sags_of'] },
      {
        name: 'ride',
        title: 'After the ride',
        fields: ['front.mark', 'front.felt', 'rear.mark', 'rear.felt', 'ride.drop', 'ride.temperature', 'ride.altitude'],
        says: ['front.felt', 'rear.felt'],
      },
      {
        name: 'conditions',
        title: 'Conditions to check',
        fields: ['conditions.hot_temperature', 'conditions.high_altitude', 'conditions.rider', 'conditions.luggage', 'conditions.luggage_front_share'],
        says: ['conditions.hot_temperature', 'conditions.high_altitude'],
      },
    ],
  },
  card: {
    rows: [],
    most: 0,
    folds: [
      {
        name: 'service',
        title: 'Hours and next service',
        fields: [
          'service.counted',
          ...(['hours', 'km'] as const).flatMap((meter) => both('service', [`now_${meter}`, `fork_last_${meter}`, `fork_every_${meter}`, `shock_last_${meter}`, `shock_every_${meter}`])),
        ],
        says: ['service.now_hours', 'service.now_km'],
      },
    ],
  },
}

/** A place's rows of fields: the first that apply, as many as it shows. */
export function rowsOf(place: PlaceName, applies: (path: FieldPath) => boolean): FieldPath[][] {
  const { rows, most, fewerWith } = PLAN[place]
  const shown = fewerWith && applies(fewerWith) ? most - 1 : most
  return rows.map((row) => row.filter(applies)).filter((row) => row.length > 0).slice(0, shown)
}

/** Where a field is at home: its place, and the fold that would hold it. Undefined for what is only turned beside the answer. */
export function homeOf(path: FieldPath): { place: PlaceName; fold: string } | undefined {
  for (const [place, plan] of Object.entries(PLAN) as [PlaceName, PlacePlan][]) {
    const inside = plan.folds.find((one) => one.fields.includes(path))
    if (inside) return { place, fold: `${place}/${inside.name}` }
    if (plan.also?.includes(path) || plan.rows.some((row) => row.includes(path))) return { place, fold: '' }
  }
  return undefined
}
