import { PRACTICE, type Explanations } from './explanation.js'

/** Findings of the bill of materials. */
export const MATERIALS: Explanations = {
  'materials.no-price-list': {
    means: 'No price list is named, so nothing has a price.',
    rule: 'Prices are never guessed; quantities are complete without them.',
    sources: [PRACTICE],
    fix: 'Write a list to fill in with --blank-list, and name it under materials.price_list.',
  },
  'materials.prices-invented': {
    means: 'The price list says of itself that its prices are invented.',
    rule: 'Demo prices must not be taken for a quote.',
    sources: [PRACTICE],
    fix: 'Name a real price list under materials.price_list.',
  },
  'materials.price-missing': {
    means: 'Some items have no price, so the totals are lower bounds.',
    rule: 'A missing price counts as unknown and not as zero.',
    sources: [PRACTICE],
    fix: 'Add usd to these items of the price list, or usd_low and usd_high when only a range is known.',
  },
  'materials.price-is-a-range': {
    means: 'Some items have only a range of prices; the totals take its high end.',
    rule: 'Costs err on the high side.',
    sources: [PRACTICE],
    fix: 'Ask the supplier for a price.',
  },
  'materials.pack-does-not-fit': {
    means: 'The price list sells an item in a unit in which it is not needed.',
    rule: 'Feet of wire cannot be counted in boxes, nor boxes in feet.',
    sources: [PRACTICE],
    fix: 'State pack as foot or spool for what is needed in feet; stick, each or box otherwise.',
  },
  'materials.prices-not-dated': {
    means: 'Prices of the list hold until a day, and the project has no date to compare with.',
    rule: 'Nothing is taken from the clock, so that the same files always give the same result.',
    sources: [PRACTICE],
    fix: 'State document.date.',
  },
  'materials.price-expired': {
    means: 'Prices held until a day before the date of the project.',
    rule: 'A supplier is not bound by them any more.',
    sources: [PRACTICE],
    fix: 'Ask the supplier for prices that still hold.',
  },
  'materials.not-counted': {
    means: 'Some kinds of cost are not stated and so are not in the total.',
    rule: 'Silence is not zero, so it is said.',
    sources: [PRACTICE],
    fix: 'State them under materials; 0 says that there are none.',
  },
  'materials.not-in-geometry': {
    means: 'Elbows of raceways, leads to the first box and supports of boxes are not in the list.',
    rule: 'Quantities are measured from the geometry of the project file, which does not hold these.',
    sources: [PRACTICE],
    fix: 'Add them under materials.extra_items, with the ids that the list prints where it has them.',
  },
  'materials.incentives-later': {
    means: 'Some incentives come later or depend on taxes or output, so they are not taken off the cost here.',
    rule: 'Only what is paid at once lowers the price; the rest belongs to the payback.',
    sources: [PRACTICE],
    fix: 'Nothing; `gablewatt payback` counts them.',
  },
  'materials.electrode-length': {
    means: 'The conductor to the electrode of the array is not counted, because its length is not stated.',
    rule: 'Lengths are never guessed.',
    sources: [PRACTICE],
    fix: 'Measure the way from the array to the electrode and state it.',
  },
  'materials.feeder-insulation': {
    means: 'A feeder or tap is new, and the insulation of its conductors is not stated, so they are not in the list.',
    rule: 'A feeder or tap without a stated size counts as new, as does the tap that takes the PV system; insulation is never guessed.',
    sources: [PRACTICE],
    fix: 'State its insulation; or its size, when it is there already.',
  },
  'materials.feeder-raceway': {
    means: 'A feeder or tap is new, and raceway, boxes and fittings of it are not in the list.',
    rule: 'The project file tells its method and length, but not its boxes, bends and supports.',
    sources: [PRACTICE],
    fix: 'Add them under materials.extra_items.',
  },
  'materials.part-missing': {
    means: 'A part of the project that asks for material is missing, so its items are not in the list.',
    rule: 'Quantities come from the results of the design: mounts and rails from the structure, wire and breakers from the wiring.',
    sources: [PRACTICE],
    fix: 'Fill in the part that the message names.',
  },
  'materials.rail-too-long': {
    means: 'Pieces of rail are longer than the longest stock that is sold, and were counted as if joined.',
    rule: 'A joint needs a splice, and may stand only where the data sheet of the rail allows it.',
    sources: [PRACTICE],
    fix: 'Buy the longer stock, or state the lengths that are sold with the rail, so that the joints are planned.',
  },
  'materials.tools-not-counted': {
    means: 'No tool is in the list, because the tools that you have are not stated.',
    rule: 'Nobody needs a second torque wrench.',
    sources: [PRACTICE],
    fix: 'State materials.tools_owned: a list, or all.',
  },
  'materials.unknown-tool': {
    means: 'A tool that you have is not one that a job here needs; its name may be misspelt.',
    rule: 'Tools are matched by the names that the list prints.',
    sources: [PRACTICE],
    fix: 'Use the names of the message.',
  },
}
