/**
 * Specific gravity G by species combination, for connections (oven-dry).
 *
 * @source NDS 2018 table 12.3.3A as quoted by secondary sources
 */
export const SPECIFIC_GRAVITY = {
  'Douglas Fir-Larch': 0.5,
  'Douglas Fir-Larch (North)': 0.49,
  'Douglas Fir-South': 0.46,
  'Hem-Fir': 0.43,
  'Hem-Fir (North)': 0.46,
  'Southern Pine': 0.55,
  'Mixed Southern Pine': 0.51,
  'Spruce-Pine-Fir': 0.42,
  'Spruce-Pine-Fir (South)': 0.36,
  'Eastern Softwoods': 0.36,
  'Northern Species': 0.35,
  'Western Woods': 0.36,
  'Western Cedars': 0.36,
  Redwood: 0.37,
  'Western Hemlock': 0.47,
  'Engelmann Spruce-Lodgepole Pine': 0.38,
  'Eastern Spruce': 0.41,
  'Northern White Cedar': 0.31,
  'Red Oak': 0.67,
  'Mixed Maple': 0.55,
} as const
