import { describe, expect, it } from 'vitest'
import { sizeStorage, type StorageChange } from './storage-house.js'

type Place = NonNullable<StorageChange['place']>

const at = (place: Place, more: StorageChange = {}) => sizeStorage({ ...more, place })
const outside = {
  location: 'exterior_wall',
  in_vehicle_path: false,
  to_door_or_window_ft: 3,
  to_gas_meter_ft: 6,
} as const satisfies Place
const severities = ({ result }: ReturnType<typeof sizeStorage>, where: string) =>
  result.findings.filter((finding) => finding.where === where).map(({ severity, id }) => `${severity} ${id}`)

// Limits by IRC 2021 R328, IFC 2021 1207.11 and NFPA 855 as officials and course summaries quote them (secondary).
describe('energy of storage', () => {
  it('20 kWh a unit, by nameplate and not by usable energy', () => {
    expect(sizeStorage({ unit: { nameplate_kwh: 20 } }).verdict('unit-energy')).toBe('pass')
    const above = sizeStorage({ unit: { nameplate_kwh: 20.1 } })
    expect(above.verdict('unit-energy')).toBe('fail')
    expect(severities(above, 'equipment.storage_units.store13.nameplate_kwh')).toEqual(['error wire.storage-place'])
    expect(sizeStorage({ unit: { usable_kwh: 30, nameplate_kwh: 19 } }).verdict('unit-energy')).toBe('pass')
  })

  it('nameplate not stated: said, not guessed', () => {
    const unknown = sizeStorage({ unit: { nameplate_kwh: undefined as never } })
    expect(unknown.verdict('unit-energy')).toBe('not_stated')
    expect(unknown.verdict('total-energy')).toBe('not_stated')
    expect(unknown.found).toContain('wire.storage-not-stated equipment.storage_units.store13.nameplate_kwh')
  })

  it.each([
    ['utility_closet', 2, 'pass'],
    ['utility_closet', 3, 'fail'],
    ['basement', 3, 'fail'],
    ['attached_garage', 4, 'pass'],
    ['attached_garage', 5, 'fail'],
    ['exterior_wall', 4, 'pass'],
    ['exterior_wall', 5, 'fail'],
    ['outdoors_on_ground', 4, 'pass'],
    ['outdoors_on_ground', 5, 'fail'],
  ] as const)('%s with %d units of 20 kWh: %s', (location, units, verdict) => {
    const sized = at({ location, units }, { storage: { count: units }, unit: { nameplate_kwh: 20, rated_output_a: 5 } })
    expect(sized.verdict('place-energy')).toBe(verdict)
  })

  it('places of one group add up', () => {
    const sized = sizeStorage({
      storage: { count: 5 },
      unit: { nameplate_kwh: 20, rated_output_a: 5 },
      installation: {
        places: {
          front: { location: 'attached_garage', units: 3 },
          shed: { location: 'detached_structure', units: 2 },
        },
      },
    })
    expect(sized.storage.energy).toEqual([
      { group: 'garages and detached structures', nameplate_kwh: 100, limit_kwh: 80 },
    ])
    expect(sized.verdict('place-energy')).toBe('fail')
  })

  it('two places of 60 kWh: each within its own limit, together above the one cap; both readings are told', () => {
    const change: StorageChange = {
      storage: { count: 6 },
      unit: { nameplate_kwh: 20, rated_output_a: 5 },
      installation: {
        place_code: 'NFPA 855-2023',
        places: { wall: { location: 'exterior_wall', units: 3 }, garage: { location: 'attached_garage', units: 3 } },
      },
    }
    const sized = sizeStorage(change)
    expect(sized.verdict('place-energy')).toBe('pass')
    expect(sized.verdict('total-energy')).toBe('fail')
    expect([sized.storage.total_limit_kwh, sized.storage.each_place_limit_kwh]).toEqual([80, 280])
    const told = sized.result.findings.find(({ where }) => where === 'storage.count')
    expect(told?.message).toContain('120 kWh')
    expect(told?.fix).toContain('280 kWh')
    const allowed = sizeStorage({
      ...change,
      installation: { ...change.installation, authority_total_kwh: 160 },
    })
    expect(allowed.verdict('total-energy')).toBe('pass')
  })

  it('IRC 2018 has no such list: no 20, 40 or 80 kWh by it, and no distances', () => {
    const sized = sizeStorage({
      unit: { nameplate_kwh: 90, rated_output_a: 5 },
      storage: { count: 2 },
      place: { ...outside, to_door_or_window_ft: 0.5, units: 2 },
      installation: { place_code: 'IRC 2018', places: { wall: { ...outside, units: 2, to_door_or_window_ft: 0.5 } } },
    })
    expect(sized.storage.checks.map(({ id }) => id)).not.toContain('unit-energy')
    expect(sized.verdict('energy-not-ruled')).toBe('not_ruled')
    expect(sized.verdict('door-window')).toBeUndefined()
    expect(sized.verdict('unit-spacing')).toBeUndefined()
    expect([sized.storage.total_limit_kwh, sized.storage.each_place_limit_kwh]).toEqual([null, null])
    expect(sized.found).toContain('wire.storage-not-ruled storage.installation.place_code')
    // Sleeping rooms stay forbidden: not in habitable space is in R327 of 2018 too.
    expect(
      at({ location: 'sleeping_room' }, { installation: { place_code: 'IRC 2018' } }).verdict('place-energy'),
    ).toBeUndefined()
  })

  it('a code that is not stated: the limits are held to, and it is said', () => {
    const sized = sizeStorage({ installation: { place_code: undefined as never }, unit: { nameplate_kwh: 21 } })
    expect(sized.verdict('place-code')).toBe('not_stated')
    expect(sized.verdict('unit-energy')).toBe('fail')
  })
})

describe('places and distances', () => {
  it.each(['habitable_space', 'sleeping_room', 'clothes_closet', 'bathroom', 'attic'] as const)(
    '%s is no place for storage, whatever the unit is marked for',
    (location) => {
      const sized = at({ location }, { unit: { listed: { ul_9540: true, ul_1741: true, dwelling_use: true } } })
      expect(sized.verdict('place-forbidden')).toBe('fail')
      const told = sized.result.findings.find(({ where }) => where === 'storage.installation.places.garage.location')
      expect(told?.severity).toBe('error')
      expect(told?.message).toContain('R328.1')
    },
  )

  it('3 ft between units, less only by the fire test of the listing, more when it asks more', () => {
    const two = (between: number | undefined, spacingIn: number | undefined) =>
      at(
        { units: 2, between_units_ft: between as never },
        {
          storage: { count: 2 },
          unit: { listed: { ul_9540: true, ul_1741: true, ul_9540a_spacing_in: spacingIn as never } },
        },
      ).verdict('unit-spacing')
    expect(two(3, undefined)).toBe('pass')
    expect(two(2.9, undefined)).toBe('fail')
    expect(two(0.5, 6)).toBe('pass')
    expect(two(0.4, 6)).toBe('fail')
    expect(two(3, 48)).toBe('fail')
    expect(two(undefined, 6)).toBe('not_stated')
    expect(sizeStorage().verdict('unit-spacing')).toBeUndefined()
  })

  it('3 ft from doors and windows on outside walls; indoors not asked', () => {
    expect(at({ ...outside, to_door_or_window_ft: 3 }).verdict('door-window')).toBe('pass')
    expect(at({ ...outside, to_door_or_window_ft: 2.99 }).verdict('door-window')).toBe('fail')
    expect(at({ ...outside, to_door_or_window_ft: undefined as never }).verdict('door-window')).toBe('not_stated')
    expect(sizeStorage().verdict('door-window')).toBeUndefined()
  })

  it('units without a place, and places without units', () => {
    expect(at({ units: 1 }, { storage: { count: 2 } }).verdict('units-placed')).toBe('fail')
    expect(sizeStorage({ installation: { places: undefined as never } }).verdict('units-placed')).toBe('not_stated')
  })

  it.each([
    ['clear_depth_in', 36],
    ['clear_width_in', 30],
    ['clear_height_in', 78],
  ] as const)('working space: %s of %d in (NEC 110.26)', (key, least) => {
    expect(at({ [key]: least }).verdict('working-space')).toBe('pass')
    expect(at({ [key]: least - 0.5 }).verdict('working-space')).toBe('fail')
    expect(at({ [key]: undefined }).verdict('working-space')).toBe('not_stated')
  })

  it('the gas meter is asked for outside', () => {
    expect(at({ ...outside, to_gas_meter_ft: undefined as never }).verdict('gas-meter')).toBe('not_stated')
    expect(at(outside).verdict('gas-meter')).toBe('pass')
  })
})

describe('alarms, cars, walls, gas', () => {
  it('a heat alarm in a garage, a smoke alarm inside, none outside', () => {
    expect(at({ alarm: 'smoke' }).verdict('alarm')).toBe('fail')
    expect(at({ alarm: 'none' }).verdict('alarm')).toBe('fail')
    expect(at({ alarm: undefined as never }).verdict('alarm')).toBe('not_stated')
    expect(at({ location: 'utility_closet', alarm: 'smoke' }).verdict('alarm')).toBe('pass')
    expect(at({ location: 'utility_closet', alarm: 'none' }).verdict('alarm')).toBe('fail')
    expect(at({ alarm_interconnected: false }).verdict('alarm-interconnected')).toBe('fail')
    expect(at({ alarm_interconnected: undefined as never }).verdict('alarm-interconnected')).toBe('not_stated')
    expect(at(outside).verdict('alarm')).toBeUndefined()
  })

  it('a car: no answer, no protection, too low', () => {
    expect(at({ in_vehicle_path: undefined as never }).verdict('vehicle-path')).toBe('not_stated')
    expect(at({ vehicle_protection: undefined as never }).verdict('vehicle-path')).toBe('not_stated')
    expect(at({ vehicle_protection: 'none' }).verdict('vehicle-path')).toBe('fail')
    expect(at({ bottom_above_floor_in: 47 }).verdict('vehicle-height')).toBe('fail')
    expect(at({ in_vehicle_path: false, vehicle_protection: undefined as never }).verdict('vehicle-path')).toBe('pass')
    expect(at({ location: 'basement', in_vehicle_path: undefined as never }).verdict('vehicle-path')).toBeUndefined()
  })

  // IFC 312: 4 in pipe, 4 ft on centre, 3 ft deep, 3 ft from the object (page of a fire department, secondary).
  it.each([
    ['diameter_in', 4, 3.5],
    ['spacing_ft', 4, 4.5],
    ['depth_ft', 3, 2.5],
    ['distance_ft', 3, 2.5],
  ] as const)('posts: %s %d holds, %d does not', (key, good, bad) => {
    const posts = { diameter_in: 4, spacing_ft: 4, depth_ft: 3, distance_ft: 3 }
    const verdict = (value: number | undefined) =>
      at({ vehicle_protection: 'posts', posts: { ...posts, [key]: value } }).verdict('vehicle-posts')
    expect([verdict(good), verdict(bad), verdict(undefined)]).toEqual(['pass', 'fail', 'not_stated'])
  })

  it('5/8 in Type X: in an attached garage always, elsewhere on bare framing', () => {
    expect(at({ gypsum_type_x_in: 0.5 }).verdict('gypsum')).toBe('fail')
    expect(at({ gypsum_type_x_in: undefined as never }).verdict('gypsum')).toBe('not_stated')
    expect(at({ gypsum_type_x_in: 0.5, unfinished_framing: false }).verdict('gypsum')).toBe('fail')
    const closet = { location: 'utility_closet', alarm: 'smoke' } as const
    expect(at({ ...closet, gypsum_type_x_in: 0.5, unfinished_framing: true }).verdict('gypsum')).toBe('fail')
    expect(at({ ...closet, unfinished_framing: false }).verdict('gypsum')).toBeUndefined()
    expect(at({ location: 'detached_structure' }).verdict('gypsum')).toBeUndefined()
  })

  it('IRC 2024 asks for a self-closing door', () => {
    const by = (code: 'IRC 2021' | 'IRC 2024', closing?: boolean) =>
      at({ self_closing_door: closing as never }, {}).verdict('self-closing-door') ??
      sizeStorage({
        installation: {
          place_code: code,
          places: { garage: { location: 'attached_garage', units: 1, self_closing_door: closing as never } },
        },
      }).verdict('self-closing-door')
    expect(by('IRC 2021')).toBeUndefined()
    expect([by('IRC 2024'), by('IRC 2024', false), by('IRC 2024', true)]).toEqual(['not_stated', 'fail', 'pass'])
  })

  it('ventilation only for cells that give off gas in charging', () => {
    expect(sizeStorage().verdict('ventilation')).toBeUndefined()
    expect(sizeStorage({ unit: { chemistry: undefined as never } }).verdict('ventilation')).toBe('not_stated')
    expect(sizeStorage({ unit: { chemistry: 'lead_acid' } }).verdict('ventilation')).toBe('not_stated')
    expect(at({ ventilated: false }, { unit: { chemistry: 'lead_acid' } }).verdict('ventilation')).toBe('fail')
    expect(at({ ventilated: true }, { unit: { chemistry: 'lead_acid' } }).verdict('ventilation')).toBe('pass')
  })

  it('NM cable in a space with units is told', () => {
    const nm = sizeStorage({
      runs: {
        storage: {
          carries: ['storage'],
          segments: { garage: { location: 'indoors', length_ft: 15, raceway: 'NM', ambient_c: 30 } },
        },
      },
    })
    expect(nm.verdict('wiring-method')).toBe('fail')
  })
})
