import type { MountValues } from '../../structure/index.js'
import type { Cell, Fact, Section, TableData } from '../../report/index.js'
import { rafterSections } from './rafter-sections.js'
import { own } from '../../values/index.js'
import { seismicSections } from './seismic-sections.js'
import { snowSections } from './snow-sections.js'

/** Every mount, for a spreadsheet. */
export function mountTable(values: MountValues): TableData {
  return {
    columns: [
      { heading: 'Mount', key: 'id' },
      { heading: 'Plane', key: 'plane' },
      { heading: 'Rail', key: 'rail' },
      { heading: 'Rafter', key: 'rafter' },
      { heading: 'x', unit: 'in', decimals: 1, key: 'x_in' },
      { heading: 'y', unit: 'in', decimals: 1, key: 'y_in' },
      { heading: 'Zone', key: 'zone' },
      { heading: 'Uplift', unit: 'lb', key: 'uplift_lb' },
      { heading: 'Down', unit: 'lb', key: 'down_lb' },
      { heading: 'Ratio', decimals: 2, key: 'ratio' },
      { heading: 'Governs', key: 'governs' },
    ],
    rows: values.mounts.map((mount): Cell[] => [
      mount.id,
      mount.plane,
      mount.rail,
      mount.rafter,
      mount.x_in,
      mount.y_in,
      mount.zone,
      mount.uplift_lb,
      mount.down_lb,
      { value: mount.ratio, tone: mount.ratio > 1 ? 'bad' : 'good' },
      mount.governs,
    ]),
  }
}

/** Every mount for the eyes: a table for each rail, so that names stay whole on a narrow terminal. */
function mountsByRail({ mounts }: MountValues): Section[] {
  const rails = [...new Set(mounts.map(({ rail }) => rail))]
  return rails.map((rail, index) => ({
    kind: 'table',
    heading: `Mounts of rail ${rail}${index === 0 ? ', from the left end of the eave' : ''}`,
    columns: [
      { heading: 'Mount' },
      { heading: 'Rafter' },
      { heading: 'x', unit: 'in', decimals: 1 },
      { heading: 'y', unit: 'in', decimals: 1 },
      { heading: 'Zone' },
      { heading: 'Uplift', unit: 'lb' },
      { heading: 'Down', unit: 'lb' },
      { heading: 'Ratio', decimals: 2 },
      { heading: 'Governs' },
    ],
    rows: mounts
      .filter((mount) => mount.rail === rail)
      .map((mount): Cell[] => [
        mount.id.startsWith(`${rail}.`) ? mount.id.slice(rail.length + 1) : mount.id,
        mount.rafter,
        mount.x_in,
        mount.y_in,
        mount.zone,
        mount.uplift_lb,
        mount.down_lb,
        { value: mount.ratio, tone: mount.ratio > 1 ? 'bad' : 'good' },
        mount.governs,
      ]),
  }))
}

/** The report of the mounts, part by part. */
export function mountSections(values: MountValues): Section[] {
  return [
    facts(values),
    zones(values),
    ...snowSections(values),
    ...seismicSections(values),
    checks(values),
    ...rafterSections(values),
    ...mountsByRail(values),
    rails(values),
  ]
}

function facts(values: MountValues): Section {
  const { counts, weakest_link: weakest, lag } = values
  return {
    kind: 'facts',
    facts: [
      { label: 'Loads by', value: values.edition },
      { label: 'Mounts', value: counts.mounts },
      ...fastenerFacts(values),
      {
        label: 'Rails',
        value: `${counts.rails} of ${counts.rail_pieces} pieces with ${counts.splices} splices`,
      },
      { label: 'Array weight', value: values.array_weight_lb, unit: 'lb' },
      { label: 'Added dead load', value: values.added_dead_load_psf, unit: 'psf', decimals: 2 },
      {
        label: 'Weakest link',
        value: {
          value: `${weakest.name} at ${weakest.where}: ${(100 * weakest.ratio).toFixed(0)} % of its ${weakest.limit_is}`,
          tone: weakest.ratio > 1 ? 'bad' : 'good',
        },
      },
      ...lagFacts(lag),
    ],
  }
}

function fastenerFacts({ mount_kind: kind, fastener, counts }: MountValues): Fact[] {
  if (counts.lag_screws > 0 && kind === 'rafter_screw') return [{ label: 'Lag screws', value: counts.lag_screws }]
  return [
    { label: 'Kind of mount', value: kind.replaceAll('_', ' ') },
    { label: 'Fasteners', value: `${fastener.count}: ${fastener.name}, into the ${fastener.into}` },
  ]
}

/** Of lag screws, where the mounts have any. */
function lagFacts(lag: MountValues['lag']): Fact[] {
  if (lag === null) return []
  return [
    { label: 'Thread in the rafter', value: lag.thread_in_rafter_in, unit: 'in', decimals: 2 },
    {
      label: 'Lead hole',
      value: `${lag.lead_hole_least_in.toFixed(3)} to ${lag.lead_hole_most_in.toFixed(3)}`,
      unit: 'in',
    },
    { label: 'Off the middle of the rafter', value: `at most ${lag.centring_tolerance_in.toFixed(2)}`, unit: 'in' },
  ]
}

function checks(values: MountValues): Section {
  return {
    kind: 'table',
    heading: 'Checks',
    columns: [
      { heading: 'Check' },
      { heading: 'Where' },
      { heading: 'Demand', align: 'right' },
      { heading: 'Limit', align: 'right' },
      { heading: 'Unit' },
      { heading: 'Limit is' },
      { heading: 'Ratio', decimals: 2 },
    ],
    rows: values.checks.map((check) => [
      check.name,
      check.where,
      figure(check.demand),
      figure(check.capacity),
      check.unit,
      check.limit_is,
      { value: check.ratio, tone: check.ratio > 1 ? 'bad' : check.governs ? 'strong' : 'good' },
    ]),
  }
}

function rails(values: MountValues): Section {
  return {
    kind: 'table',
    heading: 'Rails',
    columns: [
      { heading: 'Rail' },
      { heading: 'Plane' },
      { heading: 'From x', unit: 'in', decimals: 1 },
      { heading: 'At y', unit: 'in', decimals: 1 },
      { heading: 'Length', unit: 'in', decimals: 1 },
      { heading: 'Pieces', unit: 'in' },
      { heading: 'Splices at', unit: 'in' },
      { heading: 'Free end', unit: 'in', decimals: 1 },
    ],
    rows: values.rails.map((rail) => [
      rail.id,
      rail.plane,
      rail.x_in,
      rail.y_in,
      rail.length_in,
      rail.pieces_in.map((piece) => piece.toFixed(1)).join(' + '),
      rail.splices_in.length === 0 ? 'none' : rail.splices_in.map((splice) => splice.toFixed(1)).join(', '),
      rail.overhang_in,
    ]),
  }
}

/** Loads in whole numbers, small things such as deflections with three digits. */
function figure(value: number): string {
  return Math.abs(value) >= 100 ? value.toFixed(0) : Math.abs(value) >= 10 ? value.toFixed(1) : value.toFixed(3)
}

function zones(values: MountValues): Section {
  return {
    kind: 'table',
    heading: 'Loads and largest spacing by wind zone (allowable stress level, at right angles to the roof)',
    columns: [
      { heading: 'Zone' },
      { heading: 'Uplift', unit: 'psf', decimals: 1 },
      { heading: 'Down', unit: 'psf', decimals: 1 },
      { heading: 'Largest spacing', unit: 'in', decimals: 1 },
      { heading: 'Governed by' },
    ],
    rows: Object.entries(values.loads.zones).map(([zone, loads]) => [
      zone,
      loads.uplift_psf,
      loads.down_psf,
      own(values.max_span_in, zone) ?? null,
      own(values.max_span_governs, zone) ?? '',
    ]),
  }
}
