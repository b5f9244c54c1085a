import { PRACTICE, secondary, type Explanations } from './explanation.js'

const NDS = [secondary('NDS 2018 with its Supplement', 'chapter 3, tables 4A and 4B')]
const STATICS = [{ document: 'Statics of a beam', standing: 'read' as const }]
const SPARE =
  'Put a mount on every rafter or stagger them, take modules away there, or strengthen the rafter; have a structural engineer check it, put the letter under documents and name its id as rafters_verified_by.'
const ENGINEER = 'Show it to a structural engineer.'
const COVERED = ' As a note it is covered by the named document of an engineer.'

/** Findings about what the rafters, or the trusses, under an array carry. */
export const RAFTERS: Explanations = {
  'structure.rafter-bending-strength': {
    means:
      'With the array, or already without it, the bending stress in a rafter is more than its wood bears by the current design values.',
    rule: `Stress is moment over section modulus under each combination of dead load, live load, snow and wind, with the mounts as single forces where they stand; the wood bears Fb' = Fb CD CL CF Cr CM Ct Ci by species, grade and size.${COVERED}`,
    sources: NDS,
    fix: SPARE,
  },
  'structure.rafter-shear': {
    means: 'The shear force in a rafter, at its notch on the wall or elsewhere, is more than the wood bears.',
    rule: `Stress fv = 1.5 V / (b d), over a notch 1.5 V / (b dn) (d / dn)^2; where neither seat nor notch is stated the deepest notch that the code allows is taken.${COVERED}`,
    sources: NDS,
    fix: 'Measure seat and notch in the attic and state them; otherwise show it to a structural engineer.',
  },
  'structure.rafter-bearing': {
    means: 'A rafter presses harder on the wall plate or a purlin than its wood bears across the grain.',
    rule: `The reaction over the area of the seat is held against Fc-perp, which has no load duration factor.${COVERED}`,
    sources: NDS,
    fix: 'Measure the seat on the plate and state it; otherwise show it to a structural engineer.',
  },
  'structure.rafter-deflection': {
    means: 'A rafter sags more under live load, snow or wind than the code allows.',
    rule: `The variable load alone is held against span / 180 where the slope is over 3:12 and no ceiling hangs on the rafters, span / 240 otherwise, span / 360 with plaster.${COVERED}`,
    sources: [secondary('IRC 2021', 'table R301.7')],
    fix: SPARE,
  },
  'structure.rafter-strength-not-checked': {
    means:
      'Species or grade of the rafters is not known, or no design values are held for them, so their strength could not be checked.',
    rule: `Strength follows from species, grade and size, and is never guessed. What the lowest usual group would give is told for orientation only.${COVERED}`,
    sources: NDS,
    fix: 'Read the stamp on a rafter in the attic and state species and grade.',
  },
  'structure.rafter-code-path': {
    means:
      'The rule for existing buildings lets the array pass, although the rafters do not carry it by the wood standard.',
    rule: 'Where the gravity load of a member grows by at most 5 percent, no new check is asked. That compares new with old load and says nothing about strength.',
    sources: [secondary('IEBC 2021', '805.2')],
    fix: 'Let a structural engineer decide.',
  },
  'structure.rafter-proposals': {
    means: 'What would spare the rafters that fail, with the use that each change reaches.',
    rule: 'Each change is worked out anew: mounts on every rafter, a module less, a second rafter beside the first, a purlin.',
    sources: STATICS,
    fix: 'Choose one with a structural engineer; nailing, seats and what stands below are not checked.',
  },
  'structure.rafter-support-not-counted': {
    means: 'A purlin or knee wall under the rafters does not count as a support.',
    rule: 'It carries only with its size, 2x4 braces at most 4 ft apart and 8 ft long at 45 degrees or steeper, and a bearing wall below. Without that the spans beside it are taken as one.',
    sources: [secondary('IRC 2021', 'R802.4.5')],
    fix: 'State for each support its kind, size, braces and what they stand on, as you see them in the attic.',
  },
  'structure.rafter-load-sharing': {
    means: 'Part of the load of a mount is taken to go to the neighbouring rafters.',
    rule: 'The wood standard gives no sharing beyond the repetitive factor, which is then left out; a share under 0.8 at 16 in, or 0.9 at 24 in, is refused.',
    sources: NDS,
    fix: 'Leave load_sharing out, or let the engineer behind it state it in a document of the packet.',
  },
  'structure.rafter-uplift-tie': {
    means: 'Wind lifts a rafter off the wall with the stated force.',
    rule: 'Reaction of 0.6 D + 0.6 W at the lower support. The joint of rafter and wall is not checked here.',
    sources: STATICS,
    fix: 'Look for metal ties between rafters and wall plate, and have them checked where there are only nails.',
  },
  'structure.rafter-notch': {
    means: 'The notch of the rafters at the wall is deeper than the code allows.',
    rule: 'At a support a notch reaches at most a quarter of the depth.',
    sources: [{ document: 'NDS 2018', place: '4.4.3', standing: 'from memory' }],
    fix: ENGINEER,
  },
  'structure.rafter-ridge-board': {
    means: 'The rafters lean on a ridge board where the code asks for a ridge beam.',
    rule: `Without ties, or under 3:12, rafters on a board push the walls apart.${COVERED}`,
    sources: [secondary('IRC 2021', 'R802.4.4')],
    fix: ENGINEER,
  },
  'structure.rafter-thrust-not-checked': {
    means: 'What holds the feet of the rafters together is not stated.',
    rule: 'Rafters on a ridge board push outwards with w L / (2 tan slope); ceiling joists or ties nailed to them have to take it.',
    sources: [secondary('IRC 2021', 'R802.5.2')],
    fix: 'Look in the attic for ceiling joists nailed to the rafters, and state ridge and ties.',
  },
  'structure.rafter-axial': {
    means: 'With its axial force the hardest rafter is used more than whole, although its bending alone passes.',
    rule: "Both together: (fc / Fc')^2 + fb / (Fb' (1 - fc / FcE)); the span tables of the code leave axial force out.",
    sources: [secondary('NDS 2018', '3.9.2')],
    fix: ENGINEER,
  },
  'structure.rafter-ties-high': {
    means: 'The ties of the rafters stand higher than the table of the code goes, or their height is not stated.',
    rule: 'Ties above the plate take from the span of the rafters, by their height over that of the ridge, up to a third.',
    sources: [{ document: 'IRC 2021', place: 'table R802.4.1(9)', standing: 'from memory' }],
    fix: 'State tie_height_share, or show it to a structural engineer.',
  },
  'structure.hip-not-checked': {
    means: 'Rafters with mounts rest on a hip or valley, which is not checked.',
    rule: `A hip or valley carries the jack rafters of both sides as a beam, most of it at the ridge, and has to be held there.${COVERED}`,
    sources: [{ document: 'IRC 2021', place: 'R802.4.3', standing: 'from memory' }],
    fix: 'Have a structural engineer look at it, or keep the mounts off the rafters that end there.',
  },
  'structure.truss-not-checked': {
    means: 'The array stands on factory-made trusses, which are not judged here.',
    rule: `A truss gets no new load, hole or screw off its middle without its designer.${COVERED}`,
    sources: [{ document: 'IRC 2021', place: 'R802.10.4', standing: 'from memory' }],
    fix: 'Write the load sheet with space-mounts --load-sheet, give it to the designer of the trusses or a structural engineer, and name the letter as rafters_verified_by.',
  },
  'structure.rafter-span-not-stated': {
    means:
      'Mounts stand on parts of rafters whose supports the project does not state, so bending there was not checked.',
    rule: 'Spans are counted from the wall under the eave; a rafter goes on above a purlin or knee wall, with a span of its own.',
    sources: [PRACTICE],
    fix: 'Look in the attic for the supports up to the ridge and state the spans above the first as further_spans_ft.',
  },
  'structure.rafter-span-too-long': {
    means: 'The stated spans of the rafters are longer than the roof plane is deep.',
    rule: 'Spans are measured on the horizontal from support to support and lie under the plane.',
    sources: [PRACTICE],
    fix: 'Measure the span again, on the horizontal, or correct the outline of the plane.',
  },
  'structure.closer-for-rafters': {
    means:
      'Mounts were put closer together than rail and screws ask for, so that no rafter takes too much of the array.',
    rule: 'Mounts on every second or third rafter put two or three times its share on it. The widest spacing under which the rafters pass is taken, or the one that spares them most.',
    sources: STATICS,
    fix: 'Nothing.',
  },
  'structure.rafter-document-missing': {
    means: 'The document that the rafters shall stand on is named, but its file is not there.',
    rule: 'Only a document that is appended to the packet can stand in for a check.',
    sources: [PRACTICE],
    fix: "Put the engineer's letter at the path that documents states, as a PDF inside the folder of the project.",
  },
  'structure.rafter-document-unusable': {
    means:
      'The file of the document that the rafters shall stand on is there, but is too large, no PDF, or cannot be read.',
    rule: 'Only a document that is appended to the packet can stand in for a check; the message tells what is allowed.',
    sources: [PRACTICE],
    fix: 'Put a PDF in its place that can be read; one that is too large is printed to a new PDF with coarser pictures, or with fewer pages.',
  },
}
