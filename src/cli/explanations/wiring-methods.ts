import { nec, PRACTICE, type Explanations } from './explanation.js'

/** Findings about wiring methods, boxes and lengths. */
export const WIRING_METHODS: Explanations = {
  'wire.method-place': {
    means: 'A cable or raceway lies where the code does not allow it: in the wet, in the sun, or in the ground.',
    rule: 'NM and AC cable and flexible metal conduit are for dry places; the inside of a raceway outdoors is wet too, so a cable in it does not help.',
    sources: nec('wetRaceway'),
    fix: 'Name a raceway or cable that is allowed there, and join it in a box where the place changes.',
  },
  'wire.method-marking': {
    means:
      'A cable or flexible conduit is allowed in this place only when it is marked or listed for it, and the project does not say so.',
    rule: 'Jackets and conductors that are not made for water, sunlight or earth fail after some years.',
    sources: nec('listedEquipment'),
    fix: 'Read the print on the cable or conduit and state it under markings.',
  },
  'wire.fill-not-judged': {
    means: 'Whether the conductors fit the raceway was not judged.',
    rule: 'Fill is the sum of the conductors over the inside area; for flexible metal and intermediate metal conduit this program holds no table of inside areas.',
    sources: [...nec('racewayFill'), ...nec('racewayArea')],
    fix: 'Read the area in the table of the code and state inside_area_in2 with inside_area_source.',
  },
  'wire.cable-size': {
    means: 'The circuit needs a larger conductor than the cable is made with.',
    rule: 'NM cable ends at 2 AWG copper.',
    sources: nec('bundledCables'),
    fix: 'Use another cable or a raceway.',
  },
  'wire.cable-ground': {
    means: 'The grounding conductor inside the cable has to be read from its marking.',
    rule: 'Up to 10 AWG it is as large as the others; above that cables are made with a smaller one, which must still suit the overcurrent device.',
    sources: [...nec('equipmentGroundSize'), PRACTICE],
    fix: 'Compare the marking of the cable with the size in the message.',
  },
  'wire.joint-without-box': {
    means: 'Conductors are spliced to others where a cable begins or ends, and no box is stated there.',
    rule: 'Every splice and every change of the wiring method lies in a box, conduit body or fitting, which has to be large enough.',
    sources: [...nec('boxAtJoint'), ...nec('boxFill')],
    fix: 'State the box of the segment: kind, splice: true, and standard_box or volume_in3.',
  },
  'wire.box-fill': {
    means: 'The box is too small for what is in it.',
    rule: 'Every conductor, clamp and device counts a volume by size, so that wires are not crushed and heat can leave; since 2020 grounding conductors above four count a quarter each.',
    sources: [...nec('boxFill'), ...nec('boxVolume')],
    fix: 'Use a larger box or an extension ring with its marked volume.',
  },
  'wire.box-not-checked': {
    means: 'A box is stated without what is needed to check it.',
    rule: 'Volume, or for conductors of 4 AWG and larger the inside length, decides whether the box is large enough; for a conduit body its cross-section.',
    sources: [...nec('boxFill'), ...nec('pullBox'), ...nec('conduitBody')],
    fix: 'State what the message names.',
  },
  'wire.box-pull': {
    means: 'The box is too short for conductors of 4 AWG and larger.',
    rule: 'A straight pull needs 8 times the largest raceway; an angle or splice 6 times, and the other raceways of the row besides, so that the conductors can be bent.',
    sources: nec('pullBox'),
    fix: 'Use a longer box, or one that is marked for the size and number of these conductors.',
  },
  'wire.conduit-body': {
    means: 'A conduit body is too narrow, or holds splices that it may not.',
    rule: 'Its cross-section is at least twice that of the largest raceway; splices need a marked volume, and short-radius bodies hold none.',
    sources: nec('conduitBody'),
    fix: 'Use a larger body, or a box.',
  },
  'wire.box-facts-unused': {
    means: 'Facts that are stated for a box changed nothing.',
    rule: 'Lengths of a box and its marking for conductors matter from 4 AWG on; a straight pull has no distance between entries. A conduit body without splices goes by its cross-section alone, and loops matter only where conductors pass whole.',
    sources: nec('pullBox'),
    fix: 'Delete them, or correct the size or the pull that they were meant for.',
  },
  'wire.length-below-drawn': {
    means: 'A stated length is more than a tenth shorter than the line that the drawings show.',
    rule: 'Voltage rise, straps and the bill of materials follow from the length; too short a one flatters them all.',
    sources: [PRACTICE],
    fix: 'Measure again, or take the length from the drawing with length_ft: drawn.',
  },
  'wire.length-above-drawn': {
    means: 'A stated length is more than half as long again as the line that the drawings show.',
    rule: 'That is on the safe side, but one of the two is likely wrong.',
    sources: [PRACTICE],
    fix: 'Measure again, or draw the way as it will be laid.',
  },
}
