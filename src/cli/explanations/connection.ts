import { nec, PRACTICE, type Explanations } from './explanation.js'

/** Findings about grounding, panel, disconnects and shutdown. */
export const CONNECTION: Explanations = {
  'wire.array-bonding-small': {
    means: 'The grounding conductor of the array is smaller than its circuits need.',
    rule: 'It must carry fault current long enough for the device to open; its size follows from the rating of the device.',
    sources: nec('equipmentGroundSize'),
    fix: 'Use the size of the message or a larger one.',
  },
  'wire.array-bonding-exposed': {
    means: 'The bare grounding conductor of the array is thin enough to need protection from damage.',
    rule: 'Conductors below 6 AWG are protected by a raceway or by their place.',
    sources: nec('equipmentGroundProtection'),
    fix: 'Ask the authority whether under the modules counts as protected, or use 6 AWG.',
  },
  'wire.array-electrode': {
    means: 'The stated edition asks for a grounding electrode at the array, and the project has none.',
    rule: 'One edition required an electrode of its own; others removed the rule or permit it.',
    sources: nec('arrayElectrode'),
    fix: 'Drive a rod, or show that the array stands close enough to the electrode of the premises.',
  },
  'wire.service-conductor-unknown': {
    means: 'The size of the service conductors is not stated, so a bonding jumper could not be sized.',
    rule: 'Jumpers on the supply side follow the size of the service conductors, since no breaker protects them.',
    sources: nec('electrodeConductorSize'),
    fix: 'Read the size on the conductors, or ask the utility.',
  },
  'wire.raceway-bonding': {
    means: 'Metal raceway meets plastic, so the metal side is no longer bonded through its fittings.',
    rule: 'Every piece of metal raceway needs an unbroken path for fault current.',
    sources: nec('metalRacewayBonding'),
    fix: 'Use a grounding bushing, or a metal box with a bonding screw, on the metal side.',
  },
  'wire.breaker-position': {
    means: 'The place of the PV breaker on the busbar is not stated.',
    rule: 'With main and PV breaker at opposite ends no part of the busbar carries both currents, and more is allowed.',
    sources: nec('loadSideBusbar'),
    fix: 'State opposite_end when it stands at the other end of the busbar than the main.',
  },
  'wire.panel-busbar': {
    means: 'No rule lets so much inverter current onto the busbar of the main panel.',
    rule: 'Grid and inverters together could feed loads until the busbar melts while no breaker trips; the connection rules rule that out by sums.',
    sources: nec('loadSideBusbar'),
    fix: 'Put the breaker at the opposite end, use a smaller main breaker if the load calculation allows it, state the load breakers for the sum rule, reduce the inverters, or connect on the supply side.',
  },
  'wire.combiner-busbar': {
    means: 'No rule lets so much inverter current onto the busbar of the PV combiner panel.',
    rule: 'The same sums as in the main panel hold for every busbar that is fed from two sides.',
    sources: nec('loadSideBusbar'),
    fix: 'Use a combiner panel with a larger busbar.',
  },
  'wire.panel-spaces': {
    means: 'The main panel has fewer free spaces than the PV breaker needs.',
    rule: 'A two-pole breaker takes two spaces; tandem breakers are allowed only where the panel is listed for them.',
    sources: nec('listedEquipment'),
    fix: 'Make room with listed tandem breakers where the panel allows them, or use another panel.',
  },
  'wire.combiner-spaces': {
    means: 'The combiner panel has fewer spaces than its breakers need.',
    rule: 'A two-pole breaker takes two spaces.',
    sources: nec('listedEquipment'),
    fix: 'Use a combiner panel with more spaces, or fewer branches.',
  },
  'wire.panel-spaces-unknown': {
    means: 'How many spaces of the main panel are free is not stated.',
    rule: 'Without room there is no load-side connection, and the electrician finds out last.',
    sources: [PRACTICE],
    fix: 'Count the free one-pole spaces at the panel and state spaces_free.',
  },
  'wire.combiner-spaces-unknown': {
    means: 'How many spaces the combiner panel has is not stated.',
    rule: 'Each branch needs two spaces, and so may the output.',
    sources: [PRACTICE],
    fix: 'State spaces_total of the combiner from its data sheet.',
  },
  'wire.rapid-shutdown-array': {
    means: 'Nothing says how the conductors at the array lose their voltage in an emergency.',
    rule: 'Firefighters on the roof must not meet live DC conductors after the switch is thrown.',
    sources: nec('rapidShutdown'),
    fix: 'State module_level (module-level electronics), hazard_control_system or no_exposed_parts.',
  },
  'wire.rapid-shutdown-voltage': {
    means:
      'A single module has a higher voltage in the cold than may stay inside the array boundary after rapid shutdown.',
    rule: 'Shutdown behind every module still leaves the voltage of that module. From NEC 2017 on 80 V is the most, unless the array is a listed hazard control system or has no exposed parts.',
    sources: nec('rapidShutdown'),
    fix: 'Use modules of a lower voltage, or a listed hazard control system.',
  },
  'wire.rapid-shutdown-initiator': {
    means: 'Nothing says which switch starts the rapid shutdown.',
    rule: 'One switch, known and labelled, does it.',
    sources: nec('rapidShutdown'),
    fix: 'State which: with module-level inverters the service or PV disconnect does it.',
  },
  'wire.rapid-shutdown-outdoors': {
    means: 'The switch that starts the rapid shutdown is not stated to be outside.',
    rule: 'At a house it must be readily accessible from outside, so that nobody has to enter a burning building.',
    sources: nec('rapidShutdown'),
    fix: 'Put the switch outside and state initiator_outdoors: true.',
  },
  'wire.arc-fault': {
    means: 'The DC circuits need an arc-fault interrupter that the inverter lacks or does not state.',
    rule: 'A DC arc does not go out by itself. From 80 V on, circuits on or in a building are watched for it.',
    sources: nec('afciDc80V'),
    fix: 'Use an inverter with one, or state dc_afci from the data sheet.',
  },
  'wire.ground-fault': {
    means: 'The DC side needs ground-fault protection that the inverter lacks or does not state.',
    rule: 'A first fault to the frame is silent; the second can start a fire.',
    sources: nec('dcGroundFault'),
    fix: 'State ground_fault_protection from the data sheet, or use another inverter.',
  },
  'wire.dc-disconnect': {
    means: 'No means to cut the inverter off from its strings is stated.',
    rule: 'Whoever opens the inverter must be able to take the DC off it.',
    sources: nec('pvDisconnect'),
    fix: 'State dc_disconnect: true when one is built in, or add one under electrical.disconnects.',
  },
  'wire.pv-disconnect': {
    means: 'No switch for the whole PV system is stated.',
    rule: 'A switch or breaker, readily accessible and marked, separates the PV system from all else. On the supply side it is service equipment.',
    sources: nec('pvDisconnect'),
    fix: 'Add one under electrical.disconnects; ask utility and authority whether they want a visible switch outside.',
  },
  'wire.disconnect-rating-unknown': {
    means: 'The PV disconnect states no rating.',
    rule: 'It must carry 125 percent of the output current.',
    sources: nec('pvDisconnect'),
    fix: 'State rating_a; it stands on the switch.',
  },
  'wire.disconnect-rating': {
    means: 'The PV disconnect is rated below 125 percent of the output current.',
    rule: 'Output flows for hours, so a quarter is added.',
    sources: nec('pvDisconnect'),
    fix: 'Use a larger switch.',
  },
  'wire.disconnect-access': {
    means: 'The PV disconnect is not readily accessible.',
    rule: 'It must be reached without ladder, tool or key, by whoever has to act.',
    sources: nec('pvDisconnect'),
    fix: 'Move it.',
  },
  'wire.disconnect-lock': {
    means: 'The PV disconnect is not stated to be lockable in the open position.',
    rule: 'A lock keeps others from closing it while somebody works on the circuit.',
    sources: nec('pvDisconnect'),
    fix: 'Use one with a hasp and state lockable: true.',
  },
  'wire.disconnect-service-rated': {
    means: 'A disconnect on the supply side is not stated to be service equipment.',
    rule: 'Ahead of the main breaker only the fuses of the utility protect it, so it must withstand what the grid can give.',
    sources: nec('supplySide'),
    fix: 'Use one marked as suitable for use as service equipment.',
  },
  'wire.supply-side': {
    means: 'The inverters connected ahead of the main breaker give more than the service takes.',
    rule: 'The sum of sources on the supply side stays within the rating of the service.',
    sources: nec('supplySide'),
    fix: 'Reduce the inverters, or enlarge the service.',
  },
  'wire.supply-side-distance': {
    means: 'Between the supply-side connection and its fuses lies too much conductor, or the length is not stated.',
    rule: 'That piece is protected by nothing but the transformer of the utility, so it is kept short.',
    sources: nec('supplySide'),
    fix: 'Put the device nearer, or use current limiters where the edition allows them.',
  },
  'wire.supply-side-conductor': {
    means:
      'The conductors between the supply-side connection and its fuses are too small, or their size is not stated.',
    rule: 'They must withstand the fault current of the grid; the edition names a smallest size.',
    sources: nec('supplySide'),
    fix: 'Use at least the size that the edition names and that carries the current.',
  },
  'wire.breaker-line-load': {
    means: 'A breaker marked LINE and LOAD is fed from its load side.',
    rule: 'Such breakers are tested for current in one direction only.',
    sources: nec('backfedBreaker'),
    fix: 'Use a breaker without those marks.',
  },
  'wire.several-breakers': {
    means: 'Several PV circuits land on breakers of their own in the main panel.',
    rule: 'Each takes spaces and counts in the sums of the busbar; a combiner panel needs one breaker there.',
    sources: nec('loadSideBusbar'),
    fix: 'Nothing while there is room; otherwise use a combiner panel.',
  },
  'wire.interrupting-rating': {
    means: 'In a short circuit more current can flow than the breakers can interrupt.',
    rule: 'A breaker that opens more than its interrupting rating may burst.',
    sources: nec('interruptingRating'),
    fix: 'Use breakers with a higher interrupting rating; the utility tells the available fault current.',
  },
}
