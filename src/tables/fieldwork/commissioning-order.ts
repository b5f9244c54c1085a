/** A test of the record: what it is, and which tasks of the work plan say how it is done. */
export interface CommissioningTest {
  readonly id: string
  /** Its place in the order. */
  readonly number: string
  readonly title: string
  readonly state: string
  /** Tasks of the work plan, by their ids; only the first of several lines where the record has rows of its own. */
  readonly tasks: readonly string[]
  /** Tests of strings have no place where every module has its own inverter. */
  readonly strings?: true
  readonly moduleLevel?: true
}

/**
 * The order of the tests. Sources differ on where insulation stands; before the inverter is connected is the safe side.
 *
 * @source IEC 62446-1, not read: an instrument maker's poster on the edition of 2009, instrument manuals and trainer notes
 *   (secondary), and memory. In the US it is no law: inspection list and the makers' manuals come first.
 */
export const COMMISSIONING_TESTS: readonly CommissioningTest[] = [
  {
    id: 'visual',
    number: '0',
    title: 'Visual inspection, torque marks, labels, drawings match',
    state: 'off',
    tasks: ['test.visual'],
  },
  {
    id: 'ac_circuits',
    number: '1',
    title: 'AC side: insulation, continuity, polarity, breaker',
    state: 'off, locked out',
    tasks: ['test.ac-circuits', 'test.dc-run'],
  },
  {
    id: 'bonding',
    number: '2',
    title: 'Continuity of protective and bonding conductors',
    state: 'off',
    tasks: ['test.bonding'],
  },
  {
    id: 'polarity',
    number: '3',
    title: 'Polarity of every DC cable, before anything is joined',
    state: 'open strings, inverter DC switch off; LIVE by light',
    tasks: ['test.string-care', 'test.shutdown-units', 'test.polarity'],
    strings: true,
  },
  {
    id: 'combiner',
    number: '4',
    title: 'Combiner box: fuses last in, one negative to each, polarity compared',
    state: 'open',
    tasks: [],
    strings: true,
  },
  {
    id: 'voc',
    number: '5',
    title: 'Open-circuit voltage of each string',
    state: 'open',
    tasks: ['test.voc-alike'],
    strings: true,
  },
  {
    id: 'isc',
    number: '6',
    title: 'Short-circuit current of each string, or operating current',
    state: 'open, or on for the operating current',
    tasks: ['test.isc'],
    strings: true,
  },
  {
    id: 'insulation',
    number: '7',
    title: 'Insulation resistance of each string',
    state: 'array isolated, surge devices and inverter out',
    tasks: ['test.insulation'],
    strings: true,
  },
  {
    id: 'functional',
    number: '8',
    title: 'Function: AC voltages, switches, start-up, loss of mains',
    state: 'ON',
    tasks: ['on.order', 'on.loss-of-mains', 'on.switch-off-order'],
  },
  {
    id: 'unit_voltage',
    number: '8a',
    title: 'DC voltage of each module-level inverter, from the monitoring',
    state: 'ON',
    tasks: ['on.module-voltage'],
    moduleLevel: true,
  },
  {
    id: 'rapid_shutdown',
    number: '9',
    title: 'Rapid shutdown',
    state: 'ON, then off',
    tasks: ['on.rapid-shutdown'],
  },
  {
    id: 'energy',
    number: '10',
    title: 'Energy check: AC power against light, meter direction, monitoring',
    state: 'ON',
    tasks: ['on.energy'],
  },
]

/** A step of switching on or off; `only`: of which systems. */
export interface SwitchingStep {
  readonly says: string
  readonly only?: 'strings' | 'module_level'
  /** Whether it is for who measures, and not for the owner. */
  readonly measuring?: true
}

/** Order of energising; before the permission of the utility its last line holds. @source see COMMISSIONING_TESTS */
export const ENERGISING_ORDER: readonly SwitchingStep[] = [
  { says: 'everything locked out' },
  { says: 'AC tests' },
  { says: 'DC tests with open connectors', only: 'strings' },
  {
    says: 'DC combiner closed, then the DC switch (where the inverter manual wants AC before DC, the manual governs)',
    only: 'strings',
  },
  {
    says: 'AC breaker, after the inspection has approved the test; the utility may forbid running in parallel before its permission: then only with its consent',
  },
  { says: 'functional tests' },
  { says: 'off again and locked, until the permission to operate' },
]

/** Order of switching off, with what stops it. @source inverter manuals; 0.5 A in one of them, read */
export const SWITCH_OFF_ORDER: readonly SwitchingStep[] = [
  {
    says: 'AC first, or the rapid-shutdown initiator; then DC (some inverter manuals turn the DC switch first: the manual governs)',
    only: 'strings',
  },
  { says: 'the AC breaker or disconnect, or the rapid-shutdown initiator', only: 'module_level' },
  {
    says: 'with reversed polarity or a faulty inverter its DC switch is not opened under current: clamp meter, wait for less than 0.5 A',
    only: 'strings',
    measuring: true,
  },
  { says: 'connectors of the array are never parted under load' },
]
