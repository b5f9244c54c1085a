import { Body, Equator, Horizon, Observer, SiderealTime } from 'astronomy-engine'
import { describe, expect, it } from 'vitest'
import { atDay, ephemeris, planeAxes, sunPosition } from '../../src/sun/index.js'

const RADIANS = Math.PI / 180

describe('solar position against published values', () => {
  // Reda & Andreas, NREL/TP-560-34302, rev. January 2008, table A5.1: topocentric elevation without refraction 39.872046,
  // azimuth 194.34024 (secondary: restatements, all alike). The method used here is good to 0.01 deg, parallax 0.002 deg included.
  it('meets the worked example of the solar position report', () => {
    const sun = sunPosition(Date.UTC(2003, 9, 17, 19, 30, 30), 39.742476, -105.1786)
    expect(sun.zenithDeg).toBeCloseTo(90 - 39.872046, 1)
    expect(Math.abs(sun.zenithDeg - (90 - 39.872046))).toBeLessThan(0.01)
    expect(Math.abs(sun.azimuthDeg - 194.34024)).toBeLessThan(0.01)
  })

  // Same report: incidence 25.18700 on slope 30, surface azimuth rotation -10 from south (170 from north).
  // Slope and rotation are from memory (unverified); the printed angle is with refraction (0.016 deg), hence 0.03.
  it('meets the incidence angle of that example', () => {
    const sun = sunPosition(Date.UTC(2003, 9, 17, 19, 30, 30), 39.742476, -105.1786)
    const { normal } = planeAxes(30, 170)
    const side = Math.sin(sun.zenithDeg * RADIANS)
    const cosine =
      side * Math.sin(sun.azimuthDeg * RADIANS) * normal.east +
      side * Math.cos(sun.azimuthDeg * RADIANS) * normal.north +
      Math.cos(sun.zenithDeg * RADIANS) * normal.up
    expect(Math.abs(Math.acos(cosine) / RADIANS - 25.187)).toBeLessThan(0.03)
  })

  // Geometric positions computed with the PyEphem library (no refraction, sea level), which meets the example above to 0.0001 deg.
  it.each([
    ['Golden', '2003-10-17T19:30:30Z', 39.742476, -105.1786, 50.128, 194.3402],
    ['Sydney', '2024-12-21T02:00:00Z', -33.8688, 151.2093, 10.5354, 351.4987],
    ['Sydney', '2024-06-20T23:00:00Z', -33.8688, 151.2093, 71.0918, 42.5818],
    ['Tromso, midnight sun', '2024-06-21T22:00:00Z', 69.6492, 18.9553, 86.5481, 349.397],
    ['Reykjavik', '2024-03-20T15:00:00Z', 64.1466, -21.9426, 65.8272, 203.3963],
    ['Boston, leap day', '2024-02-29T14:45:00Z', 42.3601, -71.0589, 58.3031, 140.7432],
  ])('meets an ephemeris library at %s, %s', (_place, time, latitude, longitude, zenith, azimuth) => {
    const sun = sunPosition(Date.parse(time), latitude, longitude)
    expect(Math.abs(sun.zenithDeg - zenith)).toBeLessThan(0.01)
    expect(Math.abs(sun.azimuthDeg - azimuth)).toBeLessThan(0.04)
  })

  // Quito, sun 1.6 deg from the zenith, where azimuth is loosely defined: 0.01 deg of position is 0.4 deg of azimuth.
  it('meets the ephemeris library near the zenith', () => {
    const sun = sunPosition(Date.parse('2024-09-22T17:00:00Z'), -0.1807, -78.4678)
    expect(Math.abs(sun.zenithDeg - 1.5849)).toBeLessThan(0.01)
    expect(Math.abs(sun.azimuthDeg - 85.9653)).toBeLessThan(0.4)
  })

  // Meeus, Astronomical Algorithms, ex. 25.a: 13 October 1992, 0 h TD: declination -7.78507 (at the pole, altitude is declination).
  it('has the declination of the textbook example', () => {
    const sun = sunPosition(Date.UTC(1992, 9, 13), 90, 0)
    expect(Math.abs(90 - sun.zenithDeg + 7.78507)).toBeLessThan(0.001)
  })

  // Duffett-Smith: 27 July 1980, 0 h: declination +19 deg 13 min 53 s, by an orbit without perturbations (0.01 deg).
  it('has the declination of a second textbook', () => {
    const sun = sunPosition(Date.UTC(1980, 6, 27), 90, 0)
    expect(Math.abs(90 - sun.zenithDeg - (19 + 13 / 60 + 53 / 3600))).toBeLessThan(0.01)
  })

  // A general astronomy library from the registry (astronomy-engine, itself checked against JPL Horizons), no refraction.
  it('meets an astronomy library through a year, both hemispheres, refraction taken out', () => {
    let worstAltitude = 0
    let worstAzimuth = 0
    for (const latitude of [-60, -35, -10, 10, 35, 60]) {
      const observer = new Observer(latitude, -75, 0)
      for (let day = 0; day < 366; day += 3) {
        for (let hour = 0; hour < 24; hour += 2) {
          const time = new Date(Date.UTC(2024, 0, 1 + day, hour, 17))
          const equator = Equator(Body.Sun, time, observer, true, true)
          const truth = Horizon(time, observer, equator.ra, equator.dec)
          if (truth.altitude < 0.5 || truth.altitude > 85) continue
          const ours = sunPosition(time.getTime(), latitude, -75)
          worstAltitude = Math.max(worstAltitude, Math.abs(90 - ours.zenithDeg - truth.altitude))
          const turn = Math.abs(ours.azimuthDeg - truth.azimuth)
          worstAzimuth = Math.max(worstAzimuth, Math.min(turn, 360 - turn))
        }
      }
    }
    // Remaining error: parallax (0.0024 deg) and the low-precision series (0.01 deg).
    expect(worstAltitude).toBeLessThan(0.01)
    expect(worstAzimuth).toBeLessThan(0.05)
  })
})

describe('the sun through a typical year', () => {
  // Meeus, Astronomical Algorithms, ex. 25.a: declination -7.78507 deg on 13 October 1992, 0 h. A typical year stands
  // between leap years, so its dates are up to half a day of declination off (0.2 deg); this example: 0.15 deg.
  it('has the declination of the textbook example within the drift of the calendar', () => {
    const day = 285 // 13 October, counted from 0 h on 1 January
    expect(Math.abs(atDay(ephemeris().declinationDeg, day) + 7.78507)).toBeLessThan(0.2)
  })

  // Meeus, ex. 28.a: equation of time +13 min 42.6 s on 13 October 1992, 0 h; changes by 14 s a day there.
  it('has the equation of time of the textbook example', () => {
    expect(Math.abs(atDay(ephemeris().equationOfTimeMin, 285) - 13.70949)).toBeLessThan(0.15)
  })

  // Spencer 1971 (from memory): within 0.6 min and 0.4 deg of PyEphem in its own year. Half a day of calendar drift
  // between that year and the typical one comes on top: up to 0.25 min (30 s a day) and 0.2 deg (0.4 deg a day).
  // The tight check of both series is the one against the astronomy library below.
  it.each([
    [1, -2.904, -23.059],
    [34, -13.488, -16.764],
    [81, -7.553, 0.329],
    [172, -1.325, 23.452],
    [290, 14.825, -8.959],
  ])('agrees with the Spencer series on day %i', (dayOfYear, minutes, declination) => {
    expect(Math.abs(atDay(ephemeris().equationOfTimeMin, dayOfYear - 0.5) - minutes)).toBeLessThan(0.85)
    expect(Math.abs(atDay(ephemeris().declinationDeg, dayOfYear - 0.5) - declination)).toBeLessThan(0.6)
  })

  // Duffie & Beckman ex. 1.5.1: Madison, 3 February, 10:30 Central Standard Time, longitude 89.4 W: solar time 10:19
  // printed, 10:18.9 re-derived with the Spencer series, which is good to 0.6 min.
  it('turns clock time into solar time as the textbook does', () => {
    const solarMinutes = 10 * 60 + 30 + 4 * (90 - 89.4) + atDay(ephemeris().equationOfTimeMin, 33 + 16.5 / 24)
    expect(Math.abs(solarMinutes - (10 * 60 + 18.9))).toBeLessThan(0.6)
  })

  // Duffett-Smith: equation of time -6.4 min on 27 July 1980 at 12 h: printed to 0.1 min, and 1980 against a typical year 0.1 min.
  it('has the equation of time of a second textbook', () => {
    expect(Math.abs(atDay(ephemeris().equationOfTimeMin, 207.5) + 6.4)).toBeLessThan(0.2)
  })

  it('lies between the daily entries where the astronomy library has it', () => {
    const observer = new Observer(0, 0, 0)
    for (let day = 0; day < 364; day += 7) {
      const time = new Date(Date.UTC(2026, 0, 1 + day, 12))
      const { dec, ra } = Equator(Body.Sun, time, observer, true, true)
      expect(Math.abs(atDay(ephemeris().declinationDeg, day + 0.5) - dec)).toBeLessThan(0.012)
      // Equation of time: hour angle of the sun at 12 h UT on the prime meridian, minutes.
      const hourAngleMin = (((SiderealTime(time) - ra + 36) % 24) - 12) * 60
      expect(Math.abs(atDay(ephemeris().equationOfTimeMin, day + 0.5) - hourAngleMin)).toBeLessThan(0.05)
    }
  })
})
