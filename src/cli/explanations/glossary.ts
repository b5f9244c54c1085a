/** A word of the trade in plain words. */
export interface Term {
  readonly means: string
  /** Where the person finds it or which key of the project file holds it. */
  readonly where?: string
  /** Other words for the same thing, as somebody may type them. */
  readonly also?: readonly string[]
}

/** Words of the trade, keyed as `explain` takes them. */
export const GLOSSARY: Readonly<Record<string, Term>> = {
  ahj: {
    means:
      'Authority having jurisdiction: the office whose approval counts, mostly the building department of the city or county. It may read the code more strictly than the book.',
    also: ['authority', 'authority-having-jurisdiction', 'building-department'],
  },
  ampacity: {
    means:
      'The current that a conductor may carry for ever without its insulation growing too hot. It falls in hot air and beside other loaded conductors.',
  },
  array: {
    means: 'A group of equal modules on one roof plane with one kind of mounting.',
    where: 'arrays in the project file',
  },
  azimuth: {
    means:
      'The direction that a roof plane faces, clockwise from true north: 90 east, 180 south, 270 west. A compass shows magnetic north, which can be 15 degrees off.',
    where: 'roof_planes.ID.azimuth_deg; measure it on a map rather than with a compass',
    also: ['orientation'],
  },
  'backfed-breaker': {
    means:
      'An ordinary breaker in the house panel through which the inverters feed in, so that current flows from its load side to the busbar.',
  },
  'branch-circuit': {
    means: 'For module-level inverters: the inverters on one trunk cable behind one breaker.',
    where: 'electrical.branches',
    also: ['branch'],
  },
  'bus-rating': {
    means:
      'The current that the metal bars behind the breakers of a panel may carry. It is a property of the panel, and not the size of its main breaker.',
    where: 'on the label inside the panel door; electrical.panel.bus_a',
    also: ['busbar', 'bus', 'busbar-rating'],
  },
  'bypass-section': {
    means: 'A part of a module, mostly a third, with a diode that lets current pass it by when it is shaded.',
    where: 'bypass_sections of the module',
    also: ['bypass-diode'],
  },
  cantilever: {
    means: 'The end of a rail that reaches beyond its last mount.',
    also: ['free-end', 'overhang'],
  },
  'cell-temperature': {
    means: 'The temperature inside a module. In the sun it lies far above the air, and hot modules give less.',
  },
  clipping: {
    means: 'The energy that is lost when modules could give more than the inverter can take.',
  },
  combiner: {
    means: 'A small panel that joins the branches of inverters into one circuit to the house.',
    where: 'electrical.combiner',
  },
  'conductor-fill': {
    means: 'The share of the inside of a raceway that wires take up. Too many wires cannot be pulled and grow hot.',
    also: ['conduit-fill', 'raceway-fill'],
  },
  'continuous-load': {
    means:
      'A current that can flow for three hours or more, as that of the sun does. Wires and breakers for it are sized with a quarter more.',
  },
  'dc-ac-ratio': {
    means:
      'The rating of the modules divided by the rating of the inverters. Above 1 some power is clipped in full sun.',
    also: ['oversizing', 'inverter-loading-ratio'],
  },
  'deck-mount': {
    means:
      'A mount that is screwed into the sheathing instead of a rafter. It holds by its test on that very sheathing, and by the nails that hold the sheathing.',
    where: 'kind: deck under equipment.mounts',
    also: ['sheathing-mount'],
  },
  degradation: {
    means: 'The slow loss of output as modules age, in percent a year.',
    where: 'finance.degradation_pct_per_year',
  },
  'demand-charge': {
    means:
      'A price on the highest power of a month instead of on energy. Solar seldom lowers it, since one cloudy hour is enough.',
    where: 'the rate sheet of the utility',
  },
  derating: {
    means: 'Lowering the ampacity of a wire for hot air or for many wires in one raceway.',
    also: ['correction-factor', 'adjustment-factor'],
  },
  'design-temperature': {
    means:
      'The extreme temperatures used for design: the lowest sets the highest voltage of a string, the high one the ampacity of wires.',
    where: 'site.design_temperatures',
    also: ['extreme-low', 'design-temperatures'],
  },
  dirt: {
    means: 'Loss from dust, pollen, leaves and birds on the modules, until rain washes them.',
    where: 'losses.dirt_pct',
    also: ['soiling'],
  },
  eave: { means: 'The lower edge of a roof plane, where the gutter hangs.' },
  egc: {
    means:
      'Equipment grounding conductor: the wire, mostly green or bare, that leads fault current back so that the breaker opens.',
    also: ['equipment-grounding-conductor', 'ground-wire'],
  },
  emt: {
    means: 'Electrical metallic tubing: thin steel pipe that protects wires; it is bent, not threaded.',
    also: ['conduit'],
  },
  escalation: {
    means:
      'The yearly rise of the price of electricity that a payback study counts on. The further it is from inflation, the more it is a bet.',
    where: 'finance.electricity_escalation_pct',
  },
  exposure: {
    means:
      'How open the land around the house is to wind: B suburbs and woods, C open country, D flat shores of large water.',
    where: 'structure.wind.exposure; ask the building department',
    also: ['exposure-category', 'wind-exposure'],
  },
  'fire-class': {
    means:
      'A, B or C: how well a roof withstands fire from outside. Modules and rack are listed together; the fire type of a module alone says nothing.',
    where: 'roof_access.required_fire_class; fire under the rail; fire_type under the module',
    also: ['fire-type', 'fire-rating'],
  },
  'fire-pathway': {
    means: 'A free strip of roof, wide enough to walk on, that lets firefighters reach the ridge.',
    also: ['pathway', 'fire-setback', 'setback'],
  },
  flue: {
    means:
      'The pipe through which a furnace, water heater, stove or fireplace breathes out. Covered or crowded, it sends carbon monoxide into the house.',
    where: 'kind: flue, or serves_appliance, under obstructions of a roof plane',
    also: ['combustion-air', 'chimney'],
  },
  'ground-fault': {
    means: 'Current that leaves its wires and flows through frames or earth.',
  },
  'ground-snow-load': {
    means:
      'The weight of snow on level ground that a design must reckon with, per area. The roof carries a share of it.',
    where: 'structure.snow.ground_psf; the building department states it',
    also: ['snow-load'],
  },
  'grounding-electrode': {
    means: 'A rod or other metal in the earth to which the electrical system of a house is tied.',
    also: ['ground-rod'],
  },
  'interrupting-rating': {
    means: 'The largest short-circuit current that a breaker can still switch off safely.',
    where: 'on the breaker, mostly as AIC or kA',
    also: ['aic', 'available-fault-current'],
  },
  inverter: {
    means:
      'The device that turns the DC of modules into the AC of the house. A string inverter serves rows of modules; module-level inverters sit below each one.',
    also: ['string-inverter', 'microinverter', 'module-level-inverter'],
  },
  irradiance: {
    means:
      'The power of sunlight on a surface per area, W/m2. Full sun on a plane that faces it is about 1000 W/m2. Summed over time it is irradiation.',
    also: ['irradiation'],
  },
  isc: {
    means: 'Short-circuit current: the most current that a module gives, with its leads joined.',
    where: 'data sheet of the module',
    also: ['short-circuit-current'],
  },
  'lag-screw': {
    means: 'The thick wood screw that holds a mount in the rafter.',
    also: ['lag', 'lag-bolt'],
  },
  'load-side': {
    means: 'A connection behind the main breaker of the house, mostly through a backfed breaker.',
    also: ['load-side-connection'],
  },
  mount: {
    means: 'The foot that is screwed through the roof into a rafter and carries the rail, with its flashing.',
    also: ['standoff', 'foot', 'flashing'],
  },
  mppt: {
    means:
      'Maximum power point tracking: how an inverter finds the voltage at which modules give most. Its range is the voltage window of the inverter.',
    also: ['mppt-window', 'maximum-power-point'],
  },
  'net-metering': {
    means: 'Exported kWh are taken off the kWh of the bill, one for one, within a month or a year.',
    where: 'the rate sheet of the utility; tariff.solar.net_metering',
  },
  'net-billing': {
    means: 'Exported kWh are paid in money at a price of their own, mostly below that of use.',
    where: 'the rate sheet of the utility; tariff.solar.net_billing',
  },
  noct: {
    means: 'Nominal operating cell temperature: how hot a module gets in 800 W/m2, air of 20 C and light wind.',
    where: 'data sheet of the module',
  },
  npv: {
    means:
      "Net present value: all costs and savings turned into today's dollars and added. Above zero the system earns more than the discount rate.",
    also: ['net-present-value', 'discount-rate'],
  },
  ocpd: {
    means: 'Overcurrent protective device: a breaker or fuse.',
    also: ['breaker', 'fuse', 'overcurrent-device'],
  },
  'performance-ratio': {
    means:
      'Energy delivered divided by what the modules would give at their rating in the light on their unshaded plane.',
  },
  pitch: {
    means: 'Slope of a roof as inches of rise in 12 inches of run. 6 in 12 is 26.6 degrees.',
    where: 'roof_planes.ID.pitch_in_12 or tilt_deg',
    also: ['slope', 'tilt', 'roof-pitch'],
  },
  p90: {
    means:
      'The yearly energy that is passed in nine of ten cases, from weather and from what is not known of the method. P50 is the middle.',
    also: ['p50', 'p10', 'uncertainty'],
  },
  rafter: {
    means: 'A sloping beam of the roof. Mounts must meet one; the sheathing alone holds nothing.',
    also: ['truss', 'framing'],
  },
  rail: { means: 'The aluminium profile on the mounts that carries the modules.' },
  rake: { means: 'The sloping edge of a roof plane at a gable.' },
  'rapid-shutdown': {
    means: 'Taking the voltage off the conductors at the array within seconds, by one switch, for firefighters.',
    where: 'electrical.rapid_shutdown',
  },
  ridge: {
    means:
      'The level top edge where two roof planes meet. A hip is a sloping outer edge, a valley a sloping inner one.',
    also: ['hip', 'valley'],
  },
  'roof-zone': {
    means: 'Part of a roof for wind: the field, its edges and its corners, where wind lifts more.',
    also: ['wind-zone', 'edge-zone'],
  },
  sds: {
    means:
      'How hard short, stiff buildings are shaken in the earthquake that a design must stand, as a share of gravity.',
    where: 'structure.seismic.sds_g; the hazard tool of the load standard gives it for a place',
    also: ['design-spectral-acceleration'],
  },
  'seismic-design-category': {
    means: 'A letter from A (hardly shaken) to F that says how carefully a building is designed for earthquake.',
    where: 'structure.seismic.design_category; the building department states it',
    also: ['sdc'],
  },
  'seam-clamp': {
    means:
      'A clamp that grips the seam of a metal roof with setscrews and makes no hole. The clips under the seam are mostly weaker than the clamp.',
    where: 'kind: standing_seam_clamp under equipment.mounts',
    also: ['standing-seam-clamp', 'standing-seam'],
  },
  'self-consumption': {
    means: 'The share of solar energy that the house uses at once instead of exporting it.',
    also: ['own-use'],
  },
  stc: {
    means:
      'Standard test conditions: 1000 W/m2, cells at 25 C, light as at noon. The rating of a module holds there and almost nowhere else.',
    also: ['standard-test-conditions'],
  },
  string: {
    means: 'Modules joined one behind the other, so that their voltages add up.',
    where: 'arrays.ID.strings',
  },
  'snow-drift': {
    means:
      'Snow that wind heaps behind a ridge or against a wall; it can weigh several times as much as the even layer.',
    where: 'structure.snow.higher_roofs and structure.snow.parapets',
    also: ['drift', 'unbalanced-snow'],
  },
  'supply-side': {
    means: 'A connection ahead of the main breaker of the house. Only the utility can switch that part off.',
    also: ['line-side', 'line-side-tap', 'supply-side-connection'],
  },
  'tile-hook': {
    means: 'A bent steel arm that is screwed to the rafter under the tiles and comes out between them to the rail.',
    where: 'kind: tile_hook under equipment.mounts',
  },
  'time-of-use': {
    means: 'A tariff whose price depends on the hour, the day and the season.',
    where: 'the rate sheet of the utility; tariff.time_of_use',
    also: ['tou'],
  },
  tmy: {
    means:
      'Typical meteorological year: twelve real months, each chosen as the most usual of many years. No extreme years are in it.',
    also: ['tmy3', 'epw', 'typical-year'],
  },
  'trunk-cable': {
    means: 'The cable along a row of module-level inverters into which each of them is plugged.',
    where: 'electrical.trunk',
    also: ['trunk'],
  },
  voc: {
    means: 'Open-circuit voltage: the most voltage that a module gives, with nothing connected. It rises in the cold.',
    where: 'data sheet of the module',
    also: ['open-circuit-voltage'],
  },
  'voltage-rise': {
    means:
      'The amount by which the voltage at an inverter lies above that at the panel while it feeds in. Too much makes it switch off.',
    also: ['voltage-drop'],
  },
  'winter-wind-parameter': {
    means:
      'W2 of ASCE 7-22, a number from 0.25 to 0.65 that says how much the wind of the winter drives snow at a place.',
    where: 'structure.snow.winter_wind_parameter; the hazard tool of the load standard gives it',
    also: ['w2'],
  },
  'wind-speed': {
    means:
      'The basic wind speed of a place: a gust that is passed once in many hundred years. It is no weather record.',
    where: 'structure.wind.basic_speed_mph; the building department states it',
    also: ['basic-wind-speed'],
  },
}

/** A term with its key, found by itself or by one of its other words. */
export function findTerm(word: string): readonly [key: string, term: Term] | undefined {
  return Object.entries(GLOSSARY).find(([key, term]) => key === word || term.also?.includes(word) === true)
}
