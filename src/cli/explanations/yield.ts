import { DAY_SHAPE_SOURCE } from '../../tables/climate/index.js'
import { MOUNTING_SOURCE } from '../../tables/modules/index.js'
import { PRACTICE, type Explanations } from './explanation.js'

/** Findings of the energy estimate. */
export const YIELD: Explanations = {
  'yield.temperature-spread': {
    means:
      'A second published way of finding the temperature of the modules gives another energy; the message says how much.',
    rule: 'Hot modules give less. How hot they get over a roof depends on the air behind them, and methods disagree; half of the difference goes into the uncertainty.',
    sources: [MOUNTING_SOURCE],
    fix: 'Choose model.temperature: noct when air moves freely below the modules on all sides; otherwise nothing.',
  },
  'yield.monthly-method-limit': {
    means: 'On this plane the estimate from monthly means is less sure than on planes towards the equator.',
    rule: 'Monthly means know how much of the sun comes before noon, but not in which hours. Against the hours of 60 stations the year of planes at 60 deg to east or west was off by 1.2 % rms and 4.5 % at most, of south ones up to 34 deg by 0.7 and 2.5 %.',
    sources: [DAY_SHAPE_SOURCE],
    fix: 'Name an hourly weather file in site.climate.epw.',
  },
  'yield.unlike-strings': {
    means: 'Strings that differ lie in parallel on one tracker input, which the estimate does not reckon with.',
    rule: 'The estimate takes every module at its best point. A tracker holds all its strings at one voltage, so with another number or kind of modules the true energy is far lower; with another direction a little.',
    sources: [PRACTICE],
    fix: 'Give each string an input of its own, or make them alike in number and kind of modules.',
  },
  'yield.clipping': {
    means: 'In strong sun the inverters cut off power above their rating.',
    rule: 'A small loss is a fair price for a smaller inverter. It is counted in the estimate.',
    sources: [PRACTICE],
    fix: 'Nothing, or compare a larger inverter when the share is more than a few percent.',
  },
  'yield.shade-without-places': {
    means:
      'Obstructions on the roof plane throw shade, but the places of the modules are not known, so it is not counted.',
    rule: 'The shade of a chimney depends on which modules stand beside it.',
    sources: [PRACTICE],
    fix: 'State arrangement.blocks, or arrangement: fit.',
  },
  'yield.row-shade-without-places': {
    means:
      'Racks stand in rows that shade each other at low sun, but the places of the modules are not known, so it is not counted.',
    rule: 'A row shades the next when the sun is lower, seen along the rows, than the line from the upper edge of the one to the lower edge of the other. How much depends on the spacing.',
    sources: [PRACTICE],
    fix: 'State arrangement.blocks with row_gap_in, or arrangement: fit.',
  },
  'yield.snow-not-counted': {
    means:
      'Snow falls at the place or its months are cold, but what it takes from the modules is not in the figures, because the number of snowfalls or the snowfall itself is not known.',
    rule: 'Snow on modules can take most of the energy of a winter month. Mean snowfall of the nearest built-in site is shown where there are normals for it; a neighbour is off by 20 % in the median, by 57 to 81 % in one case of ten, and by a factor of 2 on lake shores and mountains. The monthly method wants the number of snowfalls, which the normals do not have.',
    sources: [{ document: 'Townsend & Powers, 37th IEEE PVSC', edition: '2011', standing: 'from memory' }],
    fix: 'State site.monthly_snowfall_in with site.monthly_snow_events, or losses.snow_pct by month; zero is an answer too.',
  },
}
