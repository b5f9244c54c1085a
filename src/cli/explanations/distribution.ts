import { nec, PRACTICE, type Explanations } from './explanation.js'

/** Findings about the installation as a tree: panels, feeders, taps, service and the sources that are there already. */
export const DISTRIBUTION: Explanations = {
  'wire.node-rule': {
    means: 'A conductor or device on the way between a source and the utility fails a rule of its own.',
    rule: 'Each feeder, tap and device carries 125 percent of every source that feeds through it, its calculated load, and is protected by its device.',
    sources: [...nec('feederConnection'), ...nec('nextSizeUp'), ...nec('feederLoad')],
    fix: 'Use larger conductors, another device, or put the source elsewhere; the message has both figures.',
  },
  'wire.feeder-tap': {
    means:
      'Conductors that are tapped to a feeder fit none of the ways in which a tap may go without a device at its start.',
    rule: 'A tap of 10 ft, of 25 ft or outdoors has each its own least ampacity by the device of the feeder and by the one that it ends in; sources on the feeder count with it.',
    sources: [...nec('feederTap'), ...nec('feederConnection')],
    fix: 'Shorten it, use larger conductors, state raceway and end device, or put a device at its start.',
  },
  'wire.load-above-busbar': {
    means: 'The calculated load of a panel is above its busbar or the device that protects it.',
    rule: 'A busbar is sized for the loads on it; the rules for sources come on top of that.',
    sources: nec('loadOnBusbar'),
    fix: 'Check the load calculation, or use a panel and feeder that carry the load.',
  },
  'wire.service-conductors': {
    means: 'The service conductors carry less than the rating of the service asks for.',
    rule: 'Conductors that bring the whole load of one dwelling have at least 83 percent of the rating of the service as ampacity.',
    sources: nec('dwellingService'),
    fix: 'Read size, metal and insulation on the conductors again; the utility or an electrician replaces those that are too small.',
  },
  'wire.service-ampacity': {
    means: 'The ampacity that is stated for the service conductors is more than their stated size can carry.',
    rule: 'Ampacity follows size, metal, insulation and temperature; a figure beside them does not make the conductors larger, so the lower one counts.',
    sources: nec('ampacityTable'),
    fix: 'Read the conductors again and correct the size or the figure.',
  },
  'wire.service-small': {
    means: 'The service of the dwelling is rated below 100 A.',
    rule: 'A one-family dwelling has a service disconnect of at least 100 A.',
    sources: nec('leastDwellingService'),
    fix: 'Read the rating again; a service that is smaller is older than the rule, ask the authority what it wants.',
  },
  'wire.service-unknown': {
    means: 'Rating or conductors of the service are not stated, so the service was not judged.',
    rule: 'All sources together end at the service; its conductors and rating are part of the way.',
    sources: nec('dwellingService'),
    fix: 'State electrical.service.rating_a and the conductors, or their ampacity.',
  },
  'wire.supply-side-sum': {
    means: 'The sources ahead of the service disconnect are together too much for the service.',
    rule: 'All sources there count together, by device ratings up to NEC 2017 and by current later.',
    sources: nec('supplySide'),
    fix: 'Reduce the inverters, or connect one of the sources on the load side.',
  },
  'wire.source-device-unknown': {
    means: 'A source is stated without its overcurrent device.',
    rule: 'Some sums count the ratings of devices, and the device has to carry 125 percent of the output.',
    sources: nec('acOutputSizing'),
    fix: 'Read the rating at the panel and state breaker_a.',
  },
  'wire.breaker-gfci-backfed': {
    means: 'A breaker with ground-fault or arc-fault protection is fed from its load side.',
    rule: 'Such breakers may be damaged by backfeed; only those marked as suitable for it may carry a source.',
    sources: nec('backfedBreaker'),
    fix: 'Use a standard breaker, or one that is marked for backfeed.',
  },
  'wire.busbar-load-unknown': {
    means: 'A 120 percent rule was used, and whether the busbar carries its own loads was not checked.',
    rule: 'The same paragraph that allows 120 percent asks for a busbar that is large enough for the calculated load.',
    sources: nec('loadOnBusbar'),
    fix: 'State electrical.load_calculation, or load_a of the panel.',
  },
  'wire.fault-current-unknown': {
    means: 'Whether the breakers interrupt the fault current of the service was not checked.',
    rule: 'A device that opens on a fault must be rated for the current that the utility can send.',
    sources: nec('interruptingRating'),
    fix: 'Ask the utility for the available fault current, and read the interrupting rating on the breakers.',
  },
  'wire.supply-side-interrupting': {
    means: 'The device of a connection ahead of the service disconnect interrupts less than can flow there.',
    rule: 'Nothing but the utility limits the current there, so the first device has to open the whole of it.',
    sources: nec('interruptingRating'),
    fix: 'Use fuses or a breaker with a higher interrupting rating.',
  },
  'wire.supply-side-interrupting-unknown': {
    means: 'The interrupting rating of the device ahead of the service disconnect is not stated.',
    rule: 'Nothing but the utility limits the current there, so the first device has to open the whole of it.',
    sources: nec('interruptingRating'),
    fix: 'Read it on breaker or fuses and state interrupting_rating_a of the disconnect.',
  },
  'wire.feeder-rise': {
    means:
      'Feeders between the panel with the PV breaker and the service raise the voltage too far, with what the circuits of the array do.',
    rule: 'Inverters disconnect when their voltage gets too high; the limit of their maker counts from the service on.',
    sources: nec('voltageDrop'),
    fix: 'Use larger conductors, fewer inverters, or a panel nearer to the service.',
  },
  'wire.supply-side-far': {
    means: 'The overcurrent device of a supply-side connection is far from it, in an edition that names no distance.',
    rule: 'Conductors ahead of the first device are protected by nothing but the utility; other editions hold them to 10 ft in a dwelling.',
    sources: nec('supplySide'),
    fix: 'Bring the device within 10 ft, or ask the authority.',
  },
  'wire.electrode-conductor-small': {
    means: 'The grounding electrode conductor of the service is smaller than its conductors ask for.',
    rule: 'Its size follows the service conductors; to a rod it need not be above 6 AWG, to a concrete-encased electrode not above 4 AWG copper.',
    sources: nec('electrodeConductorSize'),
    fix: 'Use the size of the message or a larger one, in one piece.',
  },
  'wire.meter-socket-small': {
    means: 'The meter socket is rated below the service.',
    rule: 'Sockets are rated for current without end and chosen by rules of the utility.',
    sources: [PRACTICE],
    fix: 'Read both ratings again and ask the utility.',
  },
  'wire.meter-adapter-unused': {
    means: 'A collar adapter is stated at the meter, and the PV system does not use it.',
    rule: 'An adapter between socket and meter is a connection ahead of the service disconnect.',
    sources: nec('supplySide'),
    fix: 'State connection.kind: supply_side, or the meter socket that is there.',
  },
  'wire.meter-adapter-rating': {
    means: 'The collar adapter is not stated to take the source devices.',
    rule: 'It is listed for a largest device, which its instructions name.',
    sources: nec('listedEquipment'),
    fix: 'Read it in the instructions, or use another adapter.',
  },
  'wire.meter-adapter-acceptance': {
    means: 'The written acceptance of the utility for the collar adapter is not among the documents.',
    rule: 'The socket belongs to the rules of the utility; many allow such adapters only by name.',
    sources: [PRACTICE],
    fix: 'Ask the utility and add its letter under documents.',
  },
}
