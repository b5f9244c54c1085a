import { on, type Base, type Case } from './every-key-case.js'

const micro = on('micro')
const drawn = on('drawn')

const inside = { location: 'indoors', length_ft: 10, raceway: 'EMT' }
const large = { ...inside, size_awg: '4' }
const roomy = { kind: 'box', volume_in3: 90, clamps: 'none' }
const body = { kind: 'conduit_body', volume_in3: 90, area_in2: 2 }
const straight = { ...roomy, pull: 'straight', length_in: 20 }
const lists = { devices: [{}], other_conductors: [{ size_awg: '12', count: 4 }] }
const angle = { ...roomy, pull: 'angle', length_in: 20, entry_distance_in: 8 }

type Box = Readonly<Record<string, unknown>>
type Piece = Readonly<Record<string, unknown>>
/** A run with a box in it. */
type Run = (box: Box, piece: Piece) => Readonly<Record<string, unknown>>

const between: Run = (box, piece) => ({ segments: { wall: { ...piece, box }, next: piece } })
const before: Run = (box, piece) => ({ first_box: box, segments: { wall: piece } })

/** Where the boxes of the cases are: in which runs, and of which base where conductors pass them whole. */
interface Place {
  readonly key: string
  readonly run: Run
  readonly whole: { readonly base: Base; readonly id: string; readonly carries: string }
}

const AFTER: Place = {
  key: 'runs.*.segments.*.box',
  run: between,
  whole: { base: 'micro', id: 'home', carries: 'branches' },
}
/** In the first box of branches their trunk cables end; in that of the output nothing has to be spliced. */
const FIRST: Place = {
  key: 'runs.*.first_box',
  run: before,
  whole: { base: 'micro', id: 'to_panel', carries: 'output' },
}

/** Each key of a box with what it becomes, the box and the pieces beside it. */
function boxCases({ key, run, whole }: Place): Record<string, Case> {
  const of = (name: string, after: unknown, box: Box, piece: Piece = inside): [string, Case] => [
    `${key}.${name}`,
    micro(after, { given: { 'runs.home': { carries: ['branches'], ...run(box, piece) } }, before: box[name] }),
  ]
  const inList = (name: string, change: unknown, stated?: unknown): [string, Case] => [
    `${key}.${name}`,
    { ...of(name, change, { ...roomy, ...lists })[1], before: stated },
  ]
  const passed = (name: string): [string, Case] => [
    `${key}.${name}`,
    on(whole.base)(true, {
      given: { [`runs.${whole.id}`]: { carries: [whole.carries], ...run(roomy, inside) } },
      path: `${key.replace('*', whole.id).replace('*', 'wall')}.${name}`,
    }),
  ]
  return Object.fromEntries([
    of('kind', 'conduit_body', roomy),
    passed('splice'),
    of('standard_box', '4 x 2-1/8 square', { kind: 'box', clamps: 'none' }),
    of('volume_in3', 10, roomy),
    of('extension_in3', 10, roomy),
    of('clamps', 'internal', roomy),
    of('support_fittings', 1, roomy),
    of('terminal_blocks', 1, roomy),
    passed('long_loops'),
    inList('devices.0.size_awg', '14'),
    inList('devices.0.gangs', 2),
    inList('other_conductors.0.size_awg', '10', '12'),
    inList('other_conductors.0.count', 5, 4),
    inList('other_conductors.0.grounding', true),
    of('area_in2', 0.1, body),
    of('short_radius', true, body),
    of('marked_for_conductors', true, { ...straight, length_in: 2 }, large),
    of('pull', 'angle', straight, large),
    of('length_in', 2, straight, large),
    of('other_trade_sizes', ['2'], angle, large),
    of('entry_distance_in', 2, angle, large),
    of('cover_distance_in', 0.5, straight, large),
  ])
}

const piece = (change: Piece) => ({
  given: { 'runs.home': { carries: ['branches'], segments: { wall: { ...inside, ...change } } } },
})
const onPlan = { length_ft: 'drawn', drawn: { from_point: 2, to_point: 3, vertical_ft: 0 } }
const onRoof = { location: 'roof', height_above_roof_in: 1, length_ft: 'drawn', drawn: { roof_plane: 'south' } }
const flexible = { raceway: 'FMC', trade_size: '3/4' }

/** Keys of wiring methods, drawn lengths and boxes. */
export const METHOD_CASES: Readonly<Record<string, Case>> = {
  ...boxCases(AFTER),
  ...boxCases(FIRST),
  'runs.*.segments.*.markings': micro(
    ['wet', 'sunlight_resistant'],
    piece({ raceway: 'MC', location: 'outdoor_wall' }),
  ),
  'runs.*.segments.*.in_insulation': micro(true, piece({ raceway: 'NM' })),
  'runs.*.segments.*.bundled_cables': micro(6, piece({ raceway: 'NM' })),
  'runs.*.segments.*.cables_spaced': micro(true, piece({ raceway: 'NM' })),
  'runs.*.segments.*.inside_area_in2': micro(0.2, {
    ...piece({ ...flexible, inside_area_in2: 0.533, inside_area_source: 'table (invented)' }),
    before: 0.533,
  }),
  'runs.*.segments.*.inside_area_source': micro('data sheet (invented)', {
    ...piece({ ...flexible, inside_area_in2: 0.533 }),
    before: 'table (invented)',
  }),
  'runs.*.segments.*.drawn.roof_plane': drawn('west', { ...piece(onRoof), before: 'south' }),
  'runs.*.segments.*.drawn.from_point': drawn(1, { ...piece(onPlan), before: 2 }),
  'runs.*.segments.*.drawn.to_point': drawn(4, { ...piece(onPlan), before: 3 }),
  'runs.*.segments.*.drawn.vertical_ft': drawn(9, { ...piece(onPlan), before: 0 }),
}
