import { editions, loadSource, POINT_TO_POINT } from '../../tables/nec/index.js'
import type { Source } from '../../worksheet/index.js'
import { nec, type Explanations } from './explanation.js'

const load = (suffix: string): Source[] => editions.map((edition) => loadSource(edition, suffix))

/** Findings about the load of the dwelling and the fault current at its service. */
export const LOADS: Explanations = {
  'wire.fault-current-twice': {
    means: 'A fault current is stated, and another follows from the transformer that is stated too.',
    rule: 'Breakers have to interrupt the largest current that can flow, so the larger of both is used, from line to line and to the neutral.',
    sources: [...nec('interruptingRating'), POINT_TO_POINT],
    fix: 'Ask the utility and take out what is out of date: available_fault_current_a or transformer.',
  },
  'wire.load-method': {
    means: 'The method of the load calculation that the project names cannot be used here.',
    rule: 'Each method has its bounds: the optional one of a new dwelling wants a service of 100 A or more, and not every edition has numbers of each method that are known to this program.',
    sources: [...load('.82'), ...load('.83')],
    fix: 'Use the method that the message names, or ask the authority which one it takes.',
  },
  'wire.load-not-stated': {
    means:
      'A part of the load calculation is not stated, so the load holds nothing of it or the least that the code counts.',
    rule: 'A load that is left out makes the calculated load too small, and a main breaker chosen by it trips.',
    sources: [...load('.82'), ...load('.83')],
    fix: 'State what there is; state {} where there is none.',
  },
  'wire.load-unused': {
    means: 'The project states something for the load calculation that the chosen method does not look at.',
    rule: 'A measured demand holds what is in place already; what is counted from nameplates needs no measurement.',
    sources: load('.87'),
    fix: 'Take it out, or choose the method that uses it.',
  },
  'wire.load-measured': {
    means: 'The measured demand cannot be used, so there is no load of the dwelling.',
    rule: 'A year of demand data, or 30 days on the leg with the most load, is a record that somebody can look up. Photovoltaics on the service hide demand: 30 days are then not allowed, and a year only as gross demand.',
    sources: load('.87'),
    fix: 'Put the record under documents with id, title and date, state how it was taken, or calculate from nameplates.',
  },
  'wire.load-vehicle': {
    means: 'Charging of a vehicle stands in the list of which a part is counted; some authorities count it whole.',
    rule: 'How the optional methods count it was read in different ways before the edition that counts it whole.',
    sources: [...load('.57'), ...load('.82')],
    fix: 'Ask the authority when the larger figure would change the design.',
  },
  'wire.load-heat-beside': {
    means: 'Several kinds of electric heat are stated, of which the method counts the largest only.',
    rule: 'The code takes the largest of its rows and does not add them, though the heaters may run together.',
    sources: load('.82(C)'),
    fix: 'Look whether they run together; then choose a main with that to spare.',
  },
  'wire.load-above-service': {
    means: 'The calculated load of the dwelling is more than its service or the conductors of the service take.',
    rule: 'A service carries the load that is calculated for it; sources on the house do not reduce it.',
    sources: nec('leastDwellingService'),
    fix: 'Control or take out loads, or enlarge the service.',
  },
  'wire.load-not-compared': {
    means: 'The calculated load could not be compared with the service, whose rating is not stated.',
    rule: 'Whether a method may be used and whether the service is large enough both follow from its rating.',
    sources: nec('leastDwellingService'),
    fix: 'State rating_a of the service from its disconnect.',
  },
}
