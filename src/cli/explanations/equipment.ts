import { INVERTER_RANGES, MODULE_RANGES, MOST_EFFICIENCY_PCT, STORAGE_RANGES } from '../../tables/equipment/index.js'
import { nec, PRACTICE, type Explanations } from './explanation.js'

const { vocCoefficient, powerCoefficient, noct, weightPsf } = MODULE_RANGES

/** What `add-equipment` and `list-equipment` find. */
export const EQUIPMENT: Explanations = {
  'equipment.power-product': {
    means: 'The rated power of a module is not the product of its voltage and its current at maximum power.',
    rule: 'Power is voltage times current. Sheets round the three by themselves, which gives some tenths of a per cent; from 1 % on it is told, from 5 % on the module is refused.',
    sources: [PRACTICE],
    fix: 'Read pmax_w, vmp_v and imp_a again, all from the column of standard test conditions and not from that of the cell in the sun.',
  },
  'equipment.curve-shape': {
    means:
      'Voltage or current at maximum power stand in an unusual proportion to those of the open and of the shorted module.',
    rule: 'Of crystalline silicon Vmp is about 0.83 of Voc and Imp about 0.94 of Isc; thin film has less.',
    sources: [PRACTICE],
    fix: 'Read the four values again; two of them may stand in the wrong line.',
  },
  'equipment.temperature-coefficient': {
    means: 'A temperature coefficient has an unusual size or sign.',
    rule: `Data sheets of silicon state power between ${powerCoefficient.low} and ${powerCoefficient.high}, and Voc between ${vocCoefficient.low} and ${vocCoefficient.high} per cent a degree, both negative, and Isc a small positive one. Voc falls more slowly than power.`,
    sources: [PRACTICE],
    fix: 'Mind sign and unit: some sheets state mV or V for each kelvin (voc_temp_coeff_v_per_c), and some the coefficient of one cell.',
  },
  'equipment.noct': {
    means: 'The nominal operating cell temperature is unusual.',
    rule: `It is the temperature of the cells at 800 W/m2, 20 deg C and a wind of 1 m/s; sheets state ${noct.low} to ${noct.high} deg C. A value near 25 is that of the rating.`,
    sources: [PRACTICE],
    fix: 'Take the line that is called NOCT or NMOT.',
  },
  'equipment.module-size': {
    means: 'A side or the frame of a module is unusually long or short.',
    rule: 'Lengths are in inches here; metric sheets state millimetres.',
    sources: [PRACTICE],
    fix: 'State the length with the unit of the sheet, such as "1722 mm".',
  },
  'equipment.power-per-area': {
    means: 'The power of a module does not suit its size.',
    rule: `Power over area at 1000 W/m2 is the efficiency. Above ${MOST_EFFICIENCY_PCT.value} %, which no cell of silicon passes, the module is refused.`,
    sources: [MOST_EFFICIENCY_PCT.source, PRACTICE],
    fix: 'Read power, length and width again.',
  },
  'equipment.weight-per-area': {
    means: 'The weight of a module does not suit its size.',
    rule: `Glass with a sheet behind it and glass on both sides weigh ${weightPsf.low} to ${weightPsf.high} pounds on a square foot. The weight goes into the load on the rafters.`,
    sources: [PRACTICE],
    fix: 'Read weight, length and width again; kilograms take their unit: "21.5 kg".',
  },
  'equipment.series-fuse': {
    means: 'The largest fuse that a module allows is small beside its own short-circuit current.',
    rule: 'A fuse in a string has to be 1.25 x 1.25 times the short-circuit current or more, and may not be above what the module allows. Where the second is below the first, no fuse fits, and three strings in parallel cannot be built.',
    sources: nec('dcOcpdRating'),
    fix: 'Read max_series_fuse_a and isc_a again; where both are right, keep to one or two strings on an input.',
  },
  'equipment.system-voltage': {
    means: 'The largest system voltage of a module is unusual.',
    rule: 'Modules are listed for 600, 1000 or 1500 V.',
    sources: [PRACTICE],
    fix: 'Take the value of the listing for North America, which may be lower than that of other markets.',
  },
  'equipment.ac-current': {
    means: 'AC current, voltage and power of an inverter do not fit together.',
    rule: 'Current is power over voltage, over the root of 3 more on three phases. Conductors and breakers are sized by the current: one that is too small is refused.',
    sources: [PRACTICE],
    fix: 'Take the rated continuous output current at the voltage that is stated.',
  },
  'equipment.voltage-window': {
    means: 'The voltages of the DC side of an inverter are not in their order.',
    rule: 'Start and tracking range lie below the largest input voltage.',
    sources: [PRACTICE],
    fix: 'Read start_v, mppt_min_v, mppt_max_v and max_dc_voltage_v again.',
  },
  'equipment.input-current': {
    means: 'An input of an inverter is said to take less short-circuit current than operating current.',
    rule: 'The short-circuit current of modules is above their operating current, and so are the limits of an input.',
    sources: [PRACTICE],
    fix: 'Read max_input_current_a and max_input_isc_a again.',
  },
  'equipment.output-device': {
    means: 'The largest overcurrent device of an inverter or its branch is too small for the current that flows there.',
    rule: 'An overcurrent device carries the output current of inverters as a continuous one, at 1.25 times its size.',
    sources: nec('dcOcpdRating'),
    fix: 'Read max_branch_ocpd_a, ac_current_a and max_per_branch again; they may belong to two voltages.',
  },
  'equipment.efficiency': {
    means: 'The efficiency of an inverter is unusual.',
    rule: `Weighted efficiencies lie between ${INVERTER_RANGES.efficiencyPct.low} and ${INVERTER_RANGES.efficiencyPct.high} %.`,
    sources: [PRACTICE],
    fix: 'Take the weighted efficiency, not the peak, in percent.',
  },
  'equipment.inverter-size': {
    means: 'Power, DC power or weight of an inverter do not suit its kind.',
    rule: 'Inverters behind modules have some hundred watts, string inverters some thousand, and both take one to two and a half times as much DC power as they give.',
    sources: [PRACTICE],
    fix: 'Read kind, ac_power_w, max_dc_power_w and weight_lb again.',
  },
  'equipment.converter': {
    means: 'Limits of a DC-to-DC converter do not fit together.',
    rule: 'Its power lies within voltage times current on both sides, and a string of listed shutdown equipment falls to 30 V.',
    sources: nec('rapidShutdown'),
    fix: 'Read the limits of input, output and string again.',
  },
  'equipment.trunk-cable': {
    means: 'The overcurrent device that a trunk cable allows is larger than its ampacity.',
    rule: 'A cable is protected at its ampacity, as long as its listing does not say otherwise.',
    sources: [PRACTICE],
    fix: 'Read ampacity_a and max_ocpd_a again.',
  },
  'equipment.rail-section': {
    means: 'Section properties of a rail do not fit together.',
    rule: 'Ix over Sx is the distance of the outermost fibre, about half of the height; the webs cannot weigh more than the rail.',
    sources: [PRACTICE],
    fix: 'Mind the units: sheets state in3, in4 or cm3, cm4. Sx is the smaller of the two of an axis.',
  },
  'equipment.rail-overhang': {
    means: 'The free end that a rail is said to allow is long beside its span.',
    rule: 'Sheets allow a third, or at most a half of the span.',
    sources: [PRACTICE],
    fix: 'Read max_cantilever_in, max_cantilever_of_span and max_span_in again.',
  },
  'equipment.screw-hole': {
    means: 'Lead hole or thread of a screw cannot be.',
    rule: 'A lead hole is narrower than the screw, and the thread is a part of its length.',
    sources: [PRACTICE],
    fix: 'Read the values of lag again.',
  },
  'equipment.mount-capacity': {
    means: 'Something about the capacity or the weight of a mount is missing or unusual.',
    rule: 'Loads at which mounts broke are divided by a safety factor before they are used.',
    sources: [PRACTICE],
    fix: 'State safety_factor beside capacity_basis: ultimate, and the weight of one mount with its hardware.',
  },
  'equipment.storage': {
    means: 'A value of a storage unit lies outside what sheets state.',
    rule: 'Round trip, standby, usable share, power over energy and years of warranty have ranges in which units of the trade lie.',
    sources: [STORAGE_RANGES.roundTripPct.source, STORAGE_RANGES.powerPerEnergy.source, PRACTICE],
    fix: 'Read the sheet again: usable or nameplate energy, AC or DC side, one way or round trip.',
  },
  'equipment.no-sheet': {
    means: 'Nothing says which data sheet the values come from.',
    rule: 'A reviewer follows every number to a page; sheets have revisions with other values.',
    sources: [PRACTICE],
    fix: 'State sheet, with name and revision.',
  },
  'equipment.same-id': {
    means: 'The id is taken by equipment with other values; nothing was written.',
    rule: 'Projects name equipment by its id: another product under it would change them all.',
    sources: [PRACTICE],
    fix: 'Take another id, or --replace.',
  },
  'equipment.same-product': {
    means: 'Two ids have the same name of maker and model.',
    rule: 'One product has one data sheet; two revisions are told apart by their name.',
    sources: [PRACTICE],
    fix: 'Keep one, or put the revision into the name.',
  },
  'equipment.replaced': {
    means: 'Equipment took the place of other values under the same id.',
    rule: 'Every project that names the id is computed with the new values from now on.',
    sources: [PRACTICE],
    fix: 'Look at what moves in the projects that use it.',
  },
  'equipment.unchanged': {
    means: 'The file holds this equipment with the same values already.',
    rule: 'Writing the same table twice changes nothing.',
    sources: [PRACTICE],
    fix: 'Nothing is to be done.',
  },
  'equipment.project-fails': {
    means: 'The project fails a check with the equipment that it has.',
    rule: 'A module or an inverter is tried in the project as it stands; what fails already would blame every one of them.',
    sources: [PRACTICE],
    fix: 'Mend the project first, as check-project says.',
  },
  'equipment.none-fits': {
    means: 'With none of the modules and inverters the project holds.',
    rule: 'Each was put in the place of the one that the project has, and roof, wiring and mounts were worked out anew.',
    sources: [PRACTICE],
    fix: 'Look at the reasons: strings of another length, or another inverter kind, need a change of the project beside it.',
  },
}
