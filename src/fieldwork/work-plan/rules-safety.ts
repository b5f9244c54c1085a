import { SAFETY_FIGURES as FIGURES, WORK_SOURCES } from '../../tables/fieldwork/index.js'
import type { TaskRule } from './task-rule.js'
import { overheadText } from './overhead-words.js'
import type { Feet } from '../../values/index.js'

/** Rules for employers; for owners who work themselves the same is good practice. */
export const SAFETY_RULES: readonly TaskRule[] = [
  {
    id: 'safety.weather-stop',
    source: WORK_SOURCES.weatherStop,
    says: `nobody is on the roof, and who is comes down, with wind over ${FIGURES.windStopMph} mph, rain, wet or frosted covering, ice or lightning; forecast read for the hours of the work`,
  },
  {
    id: 'safety.fall-protection',
    source: WORK_SOURCES.fallProtection,
    says: `everybody ${FIGURES.fallFromFt} ft or more above a lower level has a guardrail, a net or personal fall arrest; nothing less stands in for these when modules are set. State plans may ask for more`,
  },
  {
    id: 'safety.steep-roof',
    source: WORK_SOURCES.fallProtection,
    when: (system) => system.steep.length > 0,
    says: (system) =>
      `steeper than ${FIGURES.steepAboveIn12} in 12 (${system.steep.join(', ')}): guardrail with toeboard, net or personal fall arrest`,
  },
  {
    id: 'safety.anchor',
    source: WORK_SOURCES.anchor,
    says: `anchors hold ${FIGURES.anchorLb.toLocaleString('en-US')} lb for each person on them, or a qualified person has designed them with factor 2; a module rail or its foot is none`,
  },
  {
    id: 'safety.rescue',
    source: WORK_SOURCES.rescue,
    says: 'rescue is planned before anybody ties off: who brings a person hanging in a harness down at once and with what; address and emergency number written at the ladder; nobody works alone',
  },
  {
    id: 'safety.ladder',
    source: WORK_SOURCES.ladder,
    says: (system) => [
      `ladder on level ground, undamaged: foot out by a quarter of its working length (1:4), rails ${FIGURES.ladderAboveEaveFt} ft above the eave, tied at the top`,
      ...Object.entries(system.eaveHeightsFt).flatMap(([plane, heightFt]) =>
        heightFt === undefined ? [] : [ladderText(plane, heightFt)],
      ),
    ],
  },
  {
    id: 'safety.ladder-climb',
    source: WORK_SOURCES.ladderClimb,
    says: 'face the ladder with a hand on it; loads are hoisted, not carried up; rails that do not conduct near live parts',
  },
  {
    id: 'safety.holes',
    source: WORK_SOURCES.holes,
    says: (system) =>
      `${system.skylights.length === 0 ? 'skylights that the drawings lack' : `skylights (${system.skylights.join(', ')})`} and holes ${FIGURES.fallFromFt} ft or more above a floor: covered for ${FIGURES.coverLoadFactor} times the weight of people, tools and material on them at one time, fixed against shifting, marked HOLE or COVER; else guardrail or fall arrest`,
  },
  {
    id: 'safety.overhead-lines',
    source: WORK_SOURCES.overheadLines,
    says: overheadText,
  },
  {
    id: 'safety.below',
    source: WORK_SOURCES.practice,
    says: 'the ground below is roped off; tools on the roof are tied',
  },
]

/** A ladder with its foot a quarter of its working length out leans on the eave at height h: L = h / sqrt(1 - 1/16). */
function ladderText(plane: string, heightFt: Feet): string {
  const workingFt = heightFt / Math.sqrt(1 - FIGURES.ladderFootShare ** 2)
  return `${plane}: eave at ${heightFt} ft, so ${workingFt.toFixed(1)} ft of working length, foot ${(workingFt * FIGURES.ladderFootShare).toFixed(1)} ft out, ladder at least ${Math.ceil(((heightFt + FIGURES.ladderAboveEaveFt) / heightFt) * workingFt * 10) / 10} ft long without its overlap`
}

/** Lock-out of everything that the work touches. */
export const LOCK_OUT_RULES: readonly TaskRule[] = [
  {
    id: 'lock-out.sources',
    source: WORK_SOURCES.absenceOfVoltage,
    says: 'every source that can feed this place is found: utility, generator, battery, any PV that is there already; each is opened and seen open',
  },
  {
    id: 'lock-out.breaker',
    source: WORK_SOURCES.lockOut,
    says: 'the breaker, space or disconnect that takes the PV circuit is off, locked and tagged; only who set the lock takes it off',
  },
  {
    id: 'lock-out.main',
    source: WORK_SOURCES.lockOut,
    when: (system) => !system.supplySide,
    says: 'the main breaker is off and locked before work in the panel; its line side stays live with the main off: the guard over those lugs stays on, nobody reaches there',
  },
  {
    id: 'lock-out.utility',
    source: WORK_SOURCES.lockOut,
    when: (system) => system.supplySide,
    says: (system) =>
      `the connection ahead of the main is made only with the service cut by ${system.utility} itself, time agreed in writing; no main breaker makes that place dead`,
  },
  {
    id: 'lock-out.capacitors',
    source: WORK_SOURCES.inverterManual,
    says: 'an inverter that has run is left the minutes that its manual states (often 5) before its cover comes off',
  },
]

export const ABSENCE_RULES: readonly TaskRule[] = [
  {
    id: 'absence.prove',
    source: WORK_SOURCES.absenceOfVoltage,
    says: 'after the lock-out and before anything is touched: tester on a known live point, then every conductor to every other, to neutral and to ground, then the live point again; all must read none',
  },
  {
    id: 'absence.again',
    source: WORK_SOURCES.absenceOfVoltage,
    says: 'again each time that work begins anew, and in the panel with the cover off before the first wire is touched',
  },
  {
    id: 'absence.light',
    source: WORK_SOURCES.practice,
    says: 'modules in light are never dead, and a cover on them is no lock: parts that hang on them count as live',
  },
]
