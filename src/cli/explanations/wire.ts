import { nec, PRACTICE, type Explanations } from './explanation.js'

/** Findings about conductors, devices, strings and raceways. */
export const WIRE: Explanations = {
  'wire.breaker-too-small': {
    means: 'The stated breaker or fuse is smaller than the circuit needs.',
    rule: 'Inverter and module currents flow for hours, so the device is rated for 125 percent of the maximum current; a smaller one trips on a good day.',
    sources: [...nec('dcOcpdRating'), ...nec('acOutputSizing')],
    fix: 'State a device of the size that the message names.',
  },
  'wire.ocpd-above-maximum': {
    means: 'The circuit needs a larger breaker or fuse than the maker of inverter, cable or module allows.',
    rule: 'Equipment is used as its listing and instructions say; the largest device protects what lies inside it.',
    sources: nec('listedEquipment'),
    fix: 'Put fewer inverters on the branch, or fewer strings in parallel, or use modules with a larger series fuse rating.',
  },
  'wire.trunk-ampacity': {
    means: 'The branch carries more current than its trunk cable takes.',
    rule: 'A cable that carries more than its rating overheats under the modules, where nobody sees it.',
    sources: nec('listedEquipment'),
    fix: 'Put fewer inverters on the branch.',
  },
  'wire.too-many-inverters': {
    means: 'The branch holds more inverters than the makers of inverter or trunk cable allow.',
    rule: 'The limit follows from the breaker and from the voltage rise along the cable.',
    sources: nec('listedEquipment'),
    fix: 'Share the inverters over more branches.',
  },
  'wire.series-fuse-unknown': {
    means: 'Strings lie in parallel, and the largest fuse that their modules bear is not stated.',
    rule: 'In a fault one string feeds the other backwards; whether the modules stand it, or need fuses, depends on that rating.',
    sources: nec('dcOcpdRating'),
    fix: "State max_series_fuse_a from the module's data sheet.",
  },
  'wire.string-backfeed': {
    means: 'In a fault the other string can drive more current into this one than its modules bear.',
    rule: 'Without a fuse the only limit is the current of the other strings, which must stay below the series fuse rating.',
    sources: nec('dcOcpdRating'),
    fix: 'Give each string its own input, or fuse the strings.',
  },
  'wire.inverter-ground': {
    means:
      'The trunk cable has no grounding conductor, so some inverters have to be grounded by the conductor of the array.',
    rule: 'Every inverter with exposed metal needs a path for fault current, unless its listing says that it needs none.',
    sources: nec('equipmentGrounding'),
    fix: 'State needs_egc: false when the data sheet says so; otherwise lead the array conductor to every inverter.',
  },
  'wire.unlike-strings': {
    means: 'Strings that differ lie in parallel on one tracker input.',
    rule: 'A tracker holds all its strings at one voltage. Strings of another number or kind of modules want another voltage: one of them gives little, and the makers of inverters do not allow it. Strings in another direction differ in current only and lose a little. A string lies in one array and so in one direction: over two directions its module with the least light would hold the current of all.',
    sources: [...nec('listedEquipment'), PRACTICE],
    fix: 'Give each string an input of its own, or make them alike in number and kind of modules.',
  },
  'wire.no-such-input': {
    means: 'A string is connected to an input that the inverter does not have.',
    rule: 'Inputs are counted from 1 to mppt_inputs of the inverter.',
    sources: [PRACTICE],
    fix: 'Use an input that the inverter has, or correct mppt_inputs from the data sheet.',
  },
  'wire.input-short-circuit': {
    means: 'The modules on an input can give more short-circuit current than the inverter bears.',
    rule: 'The limit on the data sheet is one of safety, not of power.',
    sources: nec('listedEquipment'),
    fix: 'Connect fewer strings to this input, or use an inverter that takes this module.',
  },
  'wire.input-limit-unknown': {
    means:
      'The short-circuit current of the modules could not be compared with what the inverter bears, because one is not stated.',
    rule: 'A safety limit is never guessed. It holds for module-level inverters as for inputs of string inverters.',
    sources: nec('listedEquipment'),
    fix: "State max_input_isc_a from the inverter's data sheet, and isc_a from the module's.",
  },
  'wire.input-current': {
    means: 'The modules on an input give more current than the inverter uses.',
    rule: 'The inverter leaves the rest unused. It costs energy and does no harm while the short-circuit limit holds.',
    sources: nec('listedEquipment'),
    fix: 'Expect clipping, connect fewer strings to this input, or use an inverter that takes this module.',
  },
  'wire.voltage-cold': {
    means: 'On the coldest morning the string reaches a higher voltage than inverter, module or code allow.',
    rule: 'Voltage rises when modules are cold. It is worked out at the lowest expected temperature, and a single passing of the limit can destroy the inverter.',
    sources: nec('maxDcVoltage'),
    fix: 'Put fewer modules in series; the message names the most that pass.',
  },
  'wire.voltage-hot': {
    means: 'In the heat the string falls below the voltage from which the inverter works.',
    rule: 'Voltage falls when modules are hot and sags as they age. Below its window the inverter stops or loses energy on the best days.',
    sources: nec('listedEquipment'),
    fix: 'Put more modules in series; the message names the fewest that pass.',
  },
  'wire.voltage-above-window': {
    means:
      'The string can open at a voltage above the range in which the inverter tracks, though below its safe limit.',
    rule: 'Under load the voltage falls back into the range, so this costs at most some energy on cold mornings.',
    sources: [PRACTICE],
    fix: 'Nothing, unless cold, clear mornings are common; then one module less.',
  },
  'wire.inverter-voltage-unknown': {
    means: 'The largest DC voltage of the inverter is not stated, so the cold voltage could not be compared with it.',
    rule: 'A safety limit is never guessed.',
    sources: nec('listedEquipment'),
    fix: "State max_dc_voltage_v from the inverter's data sheet.",
  },
  'wire.named-conductor': {
    means:
      'The conductor size that the project names does not pass; the message says why and which is the smallest that does.',
    rule: 'Ampacity after all corrections, temperature of the terminals, breaker and voltage rise must all hold, in every segment that the conductor passes until it is spliced: within a run it has one size.',
    sources: [...nec('acOutputSizing'), ...nec('dcConductorAmpacity')],
    fix: 'Use the size of the message or a larger one for the whole run, leave the size out to have it chosen, or begin another run at the box where the conductor is spliced.',
  },
  'wire.voltage-oversize': {
    means: 'The voltage rise, not the current, asks for a larger conductor, which may not fit its terminals.',
    rule: 'Terminals and wire connectors take a stated range of sizes.',
    sources: nec('voltageDrop'),
    fix: 'Shorten the run, feed the trunk in its centre, or read the wire range of the terminals.',
  },
  'wire.voltage-rise': {
    means: 'Between inverter and panel the voltage rises (or on DC falls) by more than the limit.',
    rule: 'An inverter that sees too high a voltage switches off on sunny days. The code only recommends; the maker of the inverter may demand. Where the trunk leaves less than a tenth of the limit, the runs are enlarged until they take that tenth; more copper there hardly helps, so the trunk has to become better.',
    sources: [...nec('voltageDrop'), ...nec('listedEquipment')],
    fix: 'Do one of the things that the finding lists with their numbers: a shorter trunk, a feed in its centre, more branches, shorter runs, or a larger size named for every segment.',
  },
  'wire.dc-inside': {
    means: 'DC conductors run inside the building in something else than a metal raceway.',
    rule: 'DC of the array stays live while the sun shines; metal keeps a fault from starting a fire and a saw from reaching it.',
    sources: nec('dcInBuildings'),
    fix: 'Use metal tubing (EMT) or metal-clad cable inside.',
  },
  'wire.ac-with-dc': {
    means: 'AC and DC circuits share one raceway.',
    rule: 'They are kept apart so that a fault in one does not reach the other.',
    sources: nec('acDcSeparation'),
    fix: 'Give each its own raceway, or a partition.',
  },
  'wire.array-ambient': {
    means: 'Wires below modules can be hotter than the outdoor air that was used.',
    rule: 'The back of a module in the sun is far warmer than the air, and a wire that touches it is too.',
    sources: [{ document: 'NEC', place: '690.31(A)', standing: 'from memory' }],
    fix: 'Keep wires off the modules with clips, or state ambient_c of that segment.',
  },
  'wire.use-2-marking': {
    means: 'USE-2 wire is used where only a marking on it makes it allowed.',
    rule: 'Plain USE-2 has no flame rating and must not run inside; sunlight needs its own marking too.',
    sources: nec('arrayWire'),
    fix: 'Read the marking on the wire, or use PV wire in the array and THWN-2 in raceways.',
  },
  'wire.expansion-unknown': {
    means:
      'Plastic raceway is used, and the range of temperature is not known, so its change of length was not checked.',
    rule: 'PVC grows and shrinks several times more than metal and pulls boxes off the wall.',
    sources: nec('pvcExpansion'),
    fix: 'State the temperature range of the raceway, or site.design_temperatures.',
  },
  'wire.expansion-fitting': {
    means: 'A plastic raceway changes its length by so much over the year that it needs a sliding joint.',
    rule: 'A change of length of a quarter inch or more asks for an expansion fitting.',
    sources: nec('pvcExpansion'),
    fix: 'Fit one between the fixed ends, and strap the moving side loosely.',
  },
  'wire.edition-secondary': {
    means: 'The project is worked by an edition of the code whose text nobody read for this program.',
    rule: 'Articles and training pages report what changed in NEC 2026; for the rest the sections and numbers of 2023 are taken. Silence of such sources is no proof that a rule stayed.',
    sources: [{ document: 'NEC', edition: '2026', standing: 'secondary' }],
    fix: 'Hold every section against the printed edition before you file, or ask the authority whether it still takes NEC 2023.',
  },
  'wire.edition-changed': {
    means:
      'A number or permission that bears on this project changed from NEC 2023 to NEC 2026, as articles report it.',
    rule: 'Both values are told, as the new one was not read in the code. Permission to drop fractions below half an ampere is used only where the project states drop_fractions; both devices are named.',
    sources: [{ document: 'NEC', edition: '2026', standing: 'secondary' }, ...nec('fractions')],
    fix: 'Ask the authority which edition it judges by, and read the section there.',
  },
  'wire.fractions-kept': {
    means: 'The project asks that fractions of an ampere be dropped, and that changes nothing here.',
    rule: 'NEC 2026 is reported to permit it for currents of photovoltaic circuits after all calculations; earlier editions do not, and most devices are the same either way.',
    sources: nec('fractions'),
    fix: 'Take drop_fractions out of the project.',
  },
}
