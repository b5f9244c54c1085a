import { deviceSection, editions, type DeviceTopic } from '../../tables/nec/index.js'
import type { Source } from '../../worksheet/index.js'
import { nec, PRACTICE, type Explanations } from './explanation.js'

/** Where a rule about devices stands in each edition. */
function device(topic: DeviceTopic): Source[] {
  return editions.map((edition) => deviceSection(edition, topic))
}

/** Findings about converters, shutdown units, DC combiners and three phases. */
export const DC_DEVICES: Explanations = {
  'wire.optimiser-voltage': {
    means: 'The modules on one converter open at a higher voltage in the cold than its input takes.',
    rule: 'Cold cells give more voltage. The input of a converter is rated for one highest voltage, and above it the converter fails.',
    sources: nec('listedEquipment'),
    fix: 'Use a converter for a higher voltage, or fewer modules on one.',
  },
  'wire.optimiser-current': {
    means: 'The modules on one converter can give more short-circuit current than its input takes.',
    rule: 'Bright light on front and rear raises the current above the rated one, so that it counts with 125 percent where the data sheet does not say otherwise. Of a bifacial module the highest rated current counts.',
    sources: nec('listedEquipment'),
    fix: 'Use a converter for a higher current, or state isc_with_125_pct: false where its sheet compares the rated current itself.',
  },
  'wire.optimiser-power': {
    means: 'The modules on one converter have more power than its maker allows.',
    rule: 'The power of the modules is a limit of the listing, like voltage and current.',
    sources: nec('listedEquipment'),
    fix: 'Use a larger converter, or another module.',
  },
  'wire.optimiser-low': {
    means: 'In the heat the modules on one converter fall below the voltage from which it works.',
    rule: 'Hot cells give less voltage; below its lowest input voltage a converter stops.',
    sources: nec('listedEquipment'),
    fix: 'Use a converter that works from a lower voltage.',
  },
  'wire.optimiser-odd-module': {
    means: 'The modules of a string do not fill its last converter.',
    rule: 'A converter for several modules gets less voltage or current with fewer; some makers allow one such unit in a string, some do not.',
    sources: nec('listedEquipment'),
    fix: 'Read the instructions, or change the number of modules.',
  },
  'wire.optimiser-units': {
    means: 'The string has fewer or more converters in series than their maker allows.',
    rule: 'With too few, they cannot reach the voltage of the inverter; with too many, the string is too strong for them.',
    sources: nec('listedEquipment'),
    fix: 'Change the number of modules of the string.',
  },
  'wire.optimiser-string-power': {
    means: 'The modules of the string have more power than the converters of one string may carry.',
    rule: 'At the regulated voltage, power means current in the string.',
    sources: nec('listedEquipment'),
    fix: 'Divide the string.',
  },
  'wire.optimiser-string-voltage': {
    means: 'All converters together can reach a higher voltage than dwelling, modules or inverter allow.',
    rule: 'Without a listed regulated voltage, every converter counts with its largest output.',
    sources: [...nec('maxDcVoltage'), ...device('converterVoltage')],
    fix: 'Use fewer converters in series, or state regulated_string_v where the listing does.',
  },
  'wire.optimiser-limit-unknown': {
    means: 'A limit of the converters that rules the length of their string is not stated.',
    rule: 'What is not stated is not checked, and is not guessed.',
    sources: nec('listedEquipment'),
    fix: 'Take min_per_string, max_per_string and max_string_power_w from the data sheet.',
  },
  'wire.optimiser-inverter-unknown': {
    means: 'Whether converter and inverter are made for each other is not stated.',
    rule: 'Converters talk to their inverter; a pair that was not listed together neither holds the voltage nor shuts down.',
    sources: nec('listedEquipment'),
    fix: "Name the inverters of the maker's list under works_with.",
  },
  'wire.optimiser-inverter': {
    means: 'The converter is not made for this inverter.',
    rule: 'Converters talk to their inverter; a pair that was not listed together neither holds the voltage nor shuts down.',
    sources: nec('listedEquipment'),
    fix: 'Use a converter and an inverter that are listed for each other.',
  },
  'wire.optimiser-mixed': {
    means: 'An inverter has strings with converters and strings without.',
    rule: 'The inverter works at the voltage that its converters hold; plain modules do not hold it.',
    sources: nec('listedEquipment'),
    fix: 'Give every module of the inverter a converter, or none.',
  },
  'wire.shutdown-outside-voltage': {
    means:
      'After rapid shutdown the units of a string leave more voltage beyond the array boundary than the code allows.',
    rule: 'Each unit leaves a small voltage, and in series these add up: thirty units of 1 V are the limit of 30 V.',
    sources: nec('rapidShutdown'),
    fix: 'Use shorter strings, or units that leave less.',
  },
  'wire.shutdown-voltage-unknown': {
    means: 'What each unit leaves on its string after rapid shutdown is not stated.',
    rule: 'In series these voltages add up to what firefighters meet beyond the array.',
    sources: nec('rapidShutdown'),
    fix: 'Take it from the data sheet.',
  },
  'wire.shutdown-equipment-unused': {
    means: 'Shutdown equipment is stated that no string uses.',
    rule: 'Module-level inverters, AC modules and converters are shut down without it.',
    sources: [PRACTICE],
    fix: 'Take it out, or give the strings to which it belongs.',
  },
  'wire.shutdown-listing': {
    means: 'Equipment that is to bring the conductors down is not stated to be listed for it.',
    rule: 'Only listed equipment counts for rapid shutdown.',
    sources: nec('rapidShutdown'),
    fix: 'State it from the data sheet, or use listed equipment.',
  },
  'wire.shutdown-voltage': {
    means: 'The modules on one shutdown unit open at a higher voltage in the cold than it takes.',
    rule: 'The unit switches these modules off and has to bear their voltage.',
    sources: nec('listedEquipment'),
    fix: 'Use fewer modules on one unit, or another unit.',
  },
  'wire.shutdown-current': {
    means: 'The modules give more current than the shutdown units take.',
    rule: 'The highest rated short-circuit current of the module counts.',
    sources: nec('listedEquipment'),
    fix: 'Use a unit for a higher current.',
  },
  'wire.shutdown-system-voltage': {
    means: 'The string has a higher voltage in operation than the shutdown units are rated for.',
    rule: 'Units that only switch do not lower the voltage while the system runs: the string keeps its full voltage in the cold.',
    sources: [...nec('listedEquipment'), ...nec('maxDcVoltage')],
    fix: 'Use shorter strings, or units for a higher system voltage.',
  },
  'wire.shutdown-limit-unknown': {
    means: 'Limits of the shutdown units are not stated, so the modules were not compared with them.',
    rule: 'What is not stated is not checked, and is not guessed.',
    sources: nec('listedEquipment'),
    fix: 'Take them from the data sheet of the units.',
  },
  'wire.shutdown-transmitter-supply': {
    means: 'The transmitter that keeps the shutdown units on is not stated to lose its supply with the initiator.',
    rule: 'The units stay on as long as they hear the signal. If OFF does not end it, nothing is shut down.',
    sources: nec('rapidShutdown'),
    fix: 'Feed the transmitter from the circuit that the initiator opens, and state it.',
  },
  'wire.shutdown-transmitter-unknown': {
    means: 'How many strings or units one transmitter serves is not stated.',
    rule: 'Beyond its limit the signal is too weak at the last unit, which then stays off, or hears another one.',
    sources: nec('listedEquipment'),
    fix: 'Take it from the instructions of the transmitter.',
  },
  'wire.shutdown-transmitter-count': {
    means: 'There are more strings or units than the transmitters serve.',
    rule: 'Each transmitter has a limit of strings through its core and of units.',
    sources: nec('listedEquipment'),
    fix: 'Use more transmitters, where their instructions allow that.',
  },
  'wire.dc-combiner-unfused': {
    means:
      'Strings come together in a box without fuses, and the others can feed a fault in one of them with more than its modules bear.',
    rule: 'With n strings the others feed (n - 1) times 1.25 times their short-circuit current into one. From three strings on each has a fuse.',
    sources: [...nec('dcOcpdRating'), ...device('noBackfeed')],
    fix: 'Fuse every string, or bring fewer together.',
  },
  'wire.dc-combiner-polarity': {
    means: 'Fuses in one pole are not known to be in the same pole everywhere.',
    rule: 'One fuse a string is enough where all fuses are in the same pole; mixed, two faults find a way without a fuse.',
    sources: device('onePoleFused'),
    fix: 'State fused_pole, the same in every box, or fuse both poles.',
  },
  'wire.dc-combiner-voltage': {
    means: 'The rated voltage of a DC combiner is below the highest voltage of its strings, or not stated.',
    rule: 'Cold strings have the highest voltage; a switch or fuse below it does not break an arc.',
    sources: [...nec('listedEquipment'), ...nec('maxDcVoltage')],
    fix: 'Use a box with a higher rating, or state its rating.',
  },
  'wire.dc-combiner-current': {
    means: 'The rated current of a DC combiner is below the sum of its strings, or not stated.',
    rule: 'The output carries the sum of 1.25 times the short-circuit currents.',
    sources: nec('listedEquipment'),
    fix: 'Use a box with a higher rating, or state its rating.',
  },
  'wire.dc-combiner-listing': {
    means: 'Box or fuses of a DC combiner are not stated to be listed for PV DC.',
    rule: 'A DC arc does not go out by itself as an AC arc does; parts for AC do not end it.',
    sources: device('listedForDc'),
    fix: 'Use parts that are marked for PV and DC.',
  },
  'wire.dc-combiner-disconnect': {
    means: 'The output of a DC combiner carries more than 30 A and has no disconnect there.',
    rule: 'Above 30 A the box is to be switched off within sight, before somebody opens it.',
    sources: device('combinerDisconnect'),
    fix: 'Put a load-break DC disconnect in the box or near it, and state it.',
  },
  'wire.phase-unbalance': {
    means: 'The inverters do not load the three lines of the service evenly.',
    rule: 'Single-phase sources on a three-phase service are spread so that the voltages stay within 3 percent of even. What voltage comes of a current depends on the supply, which is not known here.',
    sources: device('phaseBalance'),
    fix: 'Spread equal inverters over AB, BC and CA, and ask the utility for its own limit.',
  },
  'wire.trunk-lines': {
    means: 'A branch takes all three lines, and its trunk cable is not stated to have three.',
    rule: 'Inverters that take the pairs in turn need a cable with all three lines.',
    sources: nec('listedEquipment'),
    fix: 'Use a three-phase trunk cable and state lines: 3, or put the branch on one pair.',
  },
  'wire.lost-phase': {
    means: 'A three-phase inverter is not stated to stop in all its phases when one is lost.',
    rule: 'An inverter that goes on with two phases keeps parts of a dead line alive and heats motors.',
    sources: device('lostPhase'),
    fix: 'State stops_on_lost_phase from the data sheet.',
  },
  'work.converter-strings': {
    means: 'The strings of an array have converters, so the plan gives no readings for the whole string.',
    rule: 'Without their inverter converters give a small fixed voltage each, and they limit the current. What the meter shows then says nothing about the modules, and a test voltage can hurt the converters.',
    sources: [PRACTICE],
    fix: 'Follow the instructions of the converters, and measure the modules before they are joined to them.',
  },
}
