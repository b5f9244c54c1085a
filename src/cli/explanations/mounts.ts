import { PRACTICE, secondary, type Explanations } from './explanation.js'

const SHEET = [
  {
    document: 'Data sheet or test report of the mount, as the project file states it',
    standing: 'project file' as const,
  },
]
const STATICS = [{ document: 'Statics', standing: 'read' as const }]
const CLOSER = 'Put the mounts closer together along the rail, or choose a stronger mount.'

/** Findings about seam clamps, tile hooks, deck mounts, structural screws and what their sheets limit. */
export const MOUNTS: Explanations = {
  'structure.mount-combined': {
    means: 'A mount is pulled out and pushed down the slope at once, and both together are more than it holds.',
    rule: 'The sum (uplift / allowed)^m + (along the slope / allowed)^m is at most 1; m is 1 unless the sheet gives another.',
    sources: SHEET,
    fix: CLOSER,
  },
  'structure.screw-withdrawal': {
    means: 'Wind pulls the structural screws out of the rafter with more than their report gives for the thread in it.',
    rule: 'Withdrawal is the value of the report per inch of thread in the rafter, times load duration, moisture and heat.',
    sources: SHEET,
    fix: 'Put the mounts closer together, or use a longer screw.',
  },
  'structure.screw-tension': {
    means: 'The steel of a structural screw is pulled with more than its report allows.',
    rule: 'Tension of steel and head does not grow with load duration.',
    sources: SHEET,
    fix: CLOSER,
  },
  'structure.screw-lateral': {
    means: 'Load along the slope bends the structural screws more than their report allows.',
    rule: 'The lateral value of the report is for this base, along the grain.',
    sources: SHEET,
    fix: CLOSER,
  },
  'structure.screw-combined': {
    means: 'A structural screw is pulled and bent at once by more than it holds.',
    rule: 'Both directions are taken together as for every screw that the wood holds.',
    sources: [secondary('NDS 2018', 'eq. 12.4-1')],
    fix: 'Put the mounts closer together, or use a longer screw.',
  },
  'structure.seam-clip': {
    means:
      'The clip under the seam, with its screws in the sheathing, holds less than clamp and wind on the panel pull.',
    rule: 'A clamp between two clips gives the nearer one (c - a) / c of its pull; the wind on the panel itself comes on top. The clamp is seldom the weak link.',
    sources: [...STATICS, secondary('NDS 2018', 'eq. 12.2-2, screws through the sheathing')],
    fix: 'Put the clamps closer together along the rail, or have the roofer show what clips and screws hold.',
  },
  'structure.seam-bending': {
    means: 'Between two clips the seam bends more under a clamp than the test of the panel allows.',
    rule: 'A clamp in the middle between two clips bends the seam by T c / 4.',
    sources: STATICS,
    fix: 'Put the clamps closer together along the rail, or beside the clips.',
  },
  'structure.seam-bending-not-checked': {
    means: 'What the seam bears between two clips is not stated, so its bending was not checked.',
    rule: 'Without a tested moment clamps on one seam follow the pattern of the clips and stand no closer than these.',
    sources: [PRACTICE],
    fix: 'Set each clamp beside a clip, or state the allowable moment from the test of the panel.',
  },
  'structure.seam-clamps-close': {
    means: 'Two clamps stand on one seam closer together than its clips, so one piece of seam carries both.',
    rule: 'Clamps on one seam stand no closer than the clips under it.',
    sources: [PRACTICE],
    fix: 'Stagger the rails, turn the modules, or put the rails farther apart.',
  },
  'structure.seam-float-not-checked': {
    means: 'Whether the rails leave the panels free to move was not checked.',
    rule: 'Panels grow up and down from their fixed point with heat, rails along the eave; each needs room.',
    sources: [PRACTICE],
    fix: 'Keep to the longest rail between gaps that the sheets of clamp and panel allow.',
  },
  'structure.panel-fixed-point': {
    means: 'All load along the slope of the clamps on one seam is more than the fixed point of its panel holds.',
    rule: 'A panel of a standing seam roof is held along the slope at one place only and moves everywhere else.',
    sources: STATICS,
    fix: 'Use clamps on more seams, or have the roofer strengthen the fixed points.',
  },
  'structure.seam-metals': {
    means: 'Metals of clamp, screws and panel touch that corrode together.',
    rule: 'No aluminum on copper, and stainless hardware in every clamp.',
    sources: [PRACTICE],
    fix: 'Use clamps of a metal that may touch the panels, with stainless hardware.',
  },
  'structure.seam-metals-not-stated': {
    means: 'The metal of clamp or hardware is not stated, so whether it may touch the panels was not checked.',
    rule: 'Two metals that touch in the wet eat each other.',
    sources: [PRACTICE],
    fix: 'State clamp_metal and hardware_metal from the sheet.',
  },
  'structure.hook-neck': {
    means: 'A tile hook bends at its neck more than its metal allows.',
    rule: 'The neck bears N e / Z, with the arm e, up to its yield strength over 1.67.',
    sources: [{ document: 'AISC 360', place: 'chapter F', standing: 'from memory' }],
    fix: 'Put the hooks closer together, or use a stronger hook.',
  },
  'structure.hook-on-tile': {
    means: 'Under load a tile hook goes down onto the tile below and breaks it.',
    rule: 'The hook goes down in proportion to its load, by what its test shows, and must keep off the tile.',
    sources: SHEET,
    fix: 'Put the hooks closer together, grind the tile for more gap, or use a stiffer hook.',
  },
  'structure.sheathing-nails': {
    means: 'The nails that hold the sheathing on a rafter would be pulled out with it by the mounts and the wind.',
    rule: 'Nails within 12 in up and down the rafter hold the pull of the mounts beside it and the wind on the roof itself. Framing that was green when nailed, or got wet, leaves them a quarter of their value.',
    sources: [secondary('NDS 2018', 'eq. 12.2-3 and table 11.3.3')],
    fix: 'Put the mounts closer together along the rail, nail the sheathing again from above, or use a mount that is screwed into the rafter.',
  },
  'structure.sheathing-damaged': {
    means: 'The sheathing under the array is damaged.',
    rule: 'Wet, soft or swollen sheathing carries nothing, and the wood under it is seldom sound; under an array nobody can mend it.',
    sources: [PRACTICE],
    fix: 'Have it replaced, and the rafters under it looked at, before anything is mounted.',
  },
  'structure.sheathing-point-load': {
    means: 'A mount presses on the sheathing with more than the single load that it is rated for.',
    rule: 'Roof sheathing on its rafters is rated for 200 lb at one place.',
    sources: [{ document: 'Ratings of roof sheathing', standing: 'from memory' }],
    fix: 'Put the mounts closer together, or use a mount that is screwed into the rafter.',
  },
  'structure.deck-panel-edges-not-checked': {
    means: 'Where the joints of the sheathing lie and how many layers of covering there are was not checked.',
    rule: 'Near the edge of a panel a mount holds less than in the test, and a second layer of covering is no part of it.',
    sources: SHEET,
    fix: 'Look for the joints of the sheathing from the attic and mark them on the roof before the layout.',
  },
  'structure.deck-mounts-close': {
    means: 'Two deck mounts stand closer together than their sheet allows.',
    rule: 'Mounts that pull on the same piece of sheathing hold less than one alone in the test.',
    sources: SHEET,
    fix: 'Put the mounts or the rails farther apart.',
  },
  'structure.deck-test-suspect': {
    means: 'The tested uplift of a deck mount is far above what its screws can hold in this sheathing.',
    rule: 'Over three times the withdrawal of the screws by the wood standard is a misread sheet, another panel or an ultimate value.',
    sources: [secondary('NDS 2018', 'eq. 12.2-2'), PRACTICE],
    fix: 'Read the report again: sheathing, number of screws, ultimate or allowable.',
  },
  'structure.deck-test-not-compared': {
    means:
      'Number or size of the screws of a deck mount is not stated, so whether its test is plausible was not checked.',
    rule: 'A tested value is held against the withdrawal of the screws, as misread sheets are common.',
    sources: [PRACTICE],
    fix: 'State screws and screw_size from the sheet.',
  },
  'structure.load-not-on-rafter': {
    means: 'The mounts do not stand on rafters; for the check of rafters each hands its load to the two beside it.',
    rule: 'Sheathing between two rafters carries a load as a beam on two supports does: the nearer one takes more.',
    sources: STATICS,
    fix: 'Nothing.',
  },
  'structure.mount-sheet-range': {
    means: 'Slope, height of the modules or height of the roof is outside what the sheet of the mount covers.',
    rule: 'Values of a test hold only for what was tested.',
    sources: SHEET,
    fix: 'Use a mount whose sheet covers this roof and array.',
  },
  'structure.mount-key-unused': {
    means: 'A value is stated that mounts of this kind do not use.',
    rule: 'Each kind of mount has its own checks; a value of another kind changes nothing.',
    sources: [PRACTICE],
    fix: 'Take it out, or state the kind that the mount really is.',
  },
  'mounts.by-option': {
    means: 'The spacing of the mounts is that of an option of the run, which no project file states.',
    rule: 'A result tells by which options it came about, so that what is made of it with --use can be told from the project alone.',
    sources: [PRACTICE],
    fix: 'Nothing, where that spacing is meant; else run space-mounts without the option.',
  },
}
