import { labelWords, necSource, onOneLine, type BusbarRule } from '../../tables/nec/index.js'
import { StageError } from '../../worksheet/index.js'
import type { Circuit, Job, PanelValues, RuleValues } from '../system/index.js'
import type { FeedThrough } from './judge-feed-through.js'
import { governingRule, judgeBusbar, type Busbar, type RuleVerdict } from './judge-busbar.js'
import type { Amperes } from '../../values/index.js'

/** Poles of a 240 V breaker. */
const POLES = 2

/** Sources as a panel sees them. */
export interface Sources {
  readonly inverterA: Amperes
  readonly breakersA: readonly Amperes[]
  readonly firstBreakersA: Amperes
}

/** The panel that takes the PV breaker, every rule tried. */
export function checkMainPanel(job: Job, sources: Sources): PanelValues {
  const { panel, connection } = job.electrical
  const bus: Busbar = {
    busA: rating(panel?.bus_a, 'electrical.panel.bus_a', 'busbar rating', 'on the label inside the panel door'),
    mainA: rating(
      panel?.main_a,
      'electrical.panel.main_a',
      'main rating',
      'on the main breaker, or on the breaker that feeds a subpanel',
    ),
    mainPosition:
      panel?.main_position ??
      job.worksheet.assume({
        path: 'electrical.panel.main_position',
        value: 'end' as const,
        unit: '',
        why: 'Most panels are fed at an end; the rules for a panel fed in the centre are not tried',
        source: { document: '', standing: 'common practice, no source' },
      }),
    oppositeEnd: connection?.breaker_position === 'opposite_end',
    inverterA: sources.inverterA,
    sourceBreakersA: sum(sources.breakersA),
    firstBreakersA: sources.firstBreakersA,
    loadBreakersA: panel?.breakers_a === undefined ? panel?.breaker_sum_a : sum(panel.breakers_a),
    feedThrough: feedThroughOf(job),
  }
  const values = judgePanel(job, 'panel', bus, POLES * sources.breakersA.length, panel?.spaces_free)
  if (connection?.breaker_position === undefined)
    job.worksheet.find({
      severity: 'warning',
      id: 'wire.breaker-position',
      message:
        'the position of the PV breaker on the busbar is not stated, so the rules that need the opposite end are not used',
      where: 'electrical.connection.breaker_position',
      source: job.nec('loadSideBusbar'),
      fix: 'State opposite_end when it stands at the other end of the busbar than the main',
    })
  reportPanel(job, values, 'panel', 'electrical.panel')
  return values
}

/** What hangs on feed-through lugs; what is not stated there is asked for. */
function feedThroughOf(job: Job): FeedThrough | undefined {
  const stated = job.electrical.panel?.feed_through
  if (stated === undefined) return undefined
  const where = 'electrical.panel.feed_through'
  if (stated.panel_bus_a === undefined)
    job.worksheet.find({
      severity: 'error',
      id: 'wire.feed-through-panel',
      message:
        'the busbar rating of the panel behind the feed-through lugs is not stated; main and inverters together can feed it',
      where: `${where}.panel_bus_a`,
      source: job.nec('feederConnection'),
      fix: 'Read it on the label of that panel and state it; without it no connection rule holds',
    })
  const { overcurrent_device_a: deviceA } = stated
  return {
    ampacityA: stated.conductor_ampacity_a,
    deviceA,
    deviceAt:
      stated.overcurrent_device_at ??
      (deviceA === undefined
        ? 'end'
        : job.worksheet.assume({
            path: `${where}.overcurrent_device_at`,
            value: 'end' as const,
            unit: '',
            why: 'At the end of the feed-through conductors, where it allows fewer methods',
            source: { document: '', standing: 'common practice, no source' },
          })),
    panelBusA: stated.panel_bus_a,
  }
}

/** The combiner panel: no loads, its main is the device of the combined output. */
export function checkCombiner(job: Job, branches: readonly Circuit[], output: Circuit): PanelValues {
  const combiner = job.electrical.combiner
  const breakersA = branches.map((circuit) => circuit.deviceA ?? 0)
  const others = combiner?.other_breakers_a ?? []
  const bus: Busbar = {
    busA: rating(combiner?.bus_a, 'electrical.combiner.bus_a', 'busbar rating', 'on the label of the combiner panel'),
    mainA: output.deviceA ?? 0,
    mainPosition: 'end',
    oppositeEnd: false,
    inverterA: output.continuousA,
    sourceBreakersA: sum(breakersA),
    firstBreakersA: sum(breakersA),
    loadBreakersA: sum(others),
    feedThrough: undefined,
  }
  const needed = POLES * (breakersA.length + others.length)
  const values = judgePanel(job, 'combiner', bus, needed, combiner?.spaces_total)
  reportPanel(job, values, 'combiner', 'electrical.combiner')
  return values
}

function judgePanel(job: Job, id: string, bus: Busbar, needed: number, free: number | undefined): PanelValues {
  const verdicts = judgeBusbar(job.edition, bus)
  for (const [i, verdict] of verdicts.entries()) recordRule(job, `wire.${id}.rule-${i + 1}`, id, bus, verdict)
  const governing = governingRule(verdicts)
  return {
    bus_a: bus.busA,
    main_a: bus.mainA,
    inverter_a: bus.inverterA,
    rule: governing.rule.rule,
    section: governing.rule.section,
    complies: governing.holds,
    max_inverter_a: Math.max(...verdicts.map((verdict) => verdict.maxInverterA)),
    ...(governing.maxBreakersA === undefined ? {} : { max_breakers_a: governing.maxBreakersA }),
    label: governing.holds ? labelText(governing.rule) : '',
    rules: verdicts.map(ruleValues),
    spaces_needed: needed,
    spaces_free: free ?? null,
  }
}

function ruleValues({ rule, holds, sumA, limitA, why, maxInverterA }: RuleVerdict): RuleValues {
  return {
    rule: rule.rule,
    section: rule.section,
    holds,
    sum_a: sumA ?? null,
    limit_a: limitA ?? null,
    why,
    max_inverter_a: maxInverterA,
    label: labelText(rule),
  }
}

function recordRule(job: Job, stepId: string, panel: string, bus: Busbar, verdict: RuleVerdict): void {
  const { rule, sumA, limitA } = verdict
  job.worksheet.note({
    id: stepId,
    says: `Connection rule "${rule.rule}" on the busbar of the ${panel}: ${verdict.why}`,
    formula: verdict.formula,
    inputs: [
      { symbol: 'B', value: bus.busA, unit: 'A', from: `electrical.${panel}.bus_a` },
      {
        symbol: 'M',
        value: bus.mainA,
        unit: 'A',
        from: panel === 'panel' ? 'electrical.panel.main_a' : 'device of the combined output',
      },
      { symbol: 'I', value: bus.inverterA, unit: 'A', from: 'sum of rated inverter outputs' },
    ],
    result:
      sumA === undefined
        ? { symbol: 'holds', value: 'not usable', unit: '' }
        : { symbol: 'sum', value: sumA, unit: 'A' },
    // A rule may not be usable though the numbers would fit; then its words say why, and nothing is compared.
    ...(sumA !== undefined && limitA !== undefined && (verdict.holds || sumA > limitA)
      ? { check: { relation: '<=' as const, limit: limitA, pass: verdict.holds } }
      : {}),
    source: ruleSource(rule),
  })
}

/** Words of the label that a rule asks for, '' when it asks for none. */
function labelText({ label, edition }: BusbarRule): string {
  return label === undefined ? '' : onOneLine(labelWords(label, edition)?.phrases?.[0] ?? '')
}

const ruleSource = (rule: BusbarRule) => necSource(rule.edition, rule.section, rule.standing)

function reportPanel(job: Job, values: PanelValues, id: string, where: string): void {
  const source = job.nec('loadSideBusbar')
  if (!values.complies)
    job.worksheet.find({
      severity: 'error',
      id: `wire.${id}-busbar`,
      message: `no connection rule holds on the ${id}: ${sourcesWords(values)}`,
      where,
      source,
      fix:
        id === 'panel'
          ? `${reduceWords(values)}, put the breaker at the opposite end, use a smaller main breaker if the load calculation allows it, state the load breakers for the sum rule, or connect on the supply side`
          : 'Use a combiner panel with a larger busbar',
    })
  if (values.spaces_free === null)
    job.worksheet.find({
      severity: 'warning',
      id: `wire.${id}-spaces-unknown`,
      message: `the ${id} needs ${values.spaces_needed} one-pole spaces; how many are free is not stated`,
      where,
      fix: 'Count them at the panel',
    })
  else if (values.spaces_free < values.spaces_needed)
    job.worksheet.find({
      severity: 'error',
      id: `wire.${id}-spaces`,
      message: `the ${id} needs ${values.spaces_needed} one-pole spaces and has ${values.spaces_free}`,
      where,
      source: job.nec('listedEquipment'),
      fix: 'Make room with listed tandem breakers where the panel allows them, or use another panel',
    })
}

/** What is there and what fits, in the quantity that the nearest rule counts. */
function sourcesWords({
  inverter_a: inverterA,
  max_inverter_a: maxA,
  max_breakers_a: breakersA,
  ...values
}: PanelValues): string {
  if (breakersA === undefined)
    return `${inverterA.toFixed(2)} A of inverters, the busbar takes ${maxA.toFixed(2)} A here`
  const why = values.rules.find(({ rule }) => rule === values.rule)?.why ?? ''
  return `the rule counts PV breakers, of which the busbar takes ${breakersA.toFixed(1)} A here (${why}); the inverters give ${inverterA.toFixed(2)} A`
}

function reduceWords({ max_inverter_a: maxA, max_breakers_a: breakersA }: PanelValues): string {
  if (breakersA === undefined) return `Reduce the inverters to ${maxA.toFixed(2)} A`
  return `Bring the PV breakers down to ${breakersA.toFixed(1)} A together (fewer and fuller branches, or fewer inverters)`
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0)

function rating(value: number | undefined, where: string, what: string, found: string): number {
  if (value !== undefined && Number.isFinite(value) && value > 0) return value
  throw new StageError(where, `the ${what} is not stated`, `It stands ${found}`)
}
