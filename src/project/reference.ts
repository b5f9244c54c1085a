import type { Segments } from './path.js'
import { LARGEST_METER_BYTES, LARGEST_TERMS_BYTES, LARGEST_WEATHER_BYTES, LARGEST_YAML_BYTES } from './budgets.js'

/** A place in the project that names another file. */
export interface Reference {
  readonly segments: Segments
  readonly most: number
  /** Encoding to fall back on; only for text that others make. */
  readonly fallback?: 'latin1'
  /** The part of the project that the file's maps are merged under; a file without it is kept as text. */
  readonly mergedInto?: Segments
}

/** All of them. A new one is a line here. */
export const REFERENCES: readonly Reference[] = [
  { segments: ['equipment', 'file'], most: LARGEST_YAML_BYTES, mergedInto: ['equipment'] },
  { segments: ['site', 'climate', 'epw'], most: LARGEST_WEATHER_BYTES, fallback: 'latin1' },
  { segments: ['site', 'climate', 'file'], most: LARGEST_WEATHER_BYTES, fallback: 'latin1' },
  { segments: ['materials', 'price_list'], most: LARGEST_YAML_BYTES },
  { segments: ['permit', 'authority'], most: LARGEST_YAML_BYTES },
  { segments: ['proposal', 'terms_file'], most: LARGEST_TERMS_BYTES },
  { segments: ['usage', 'green_button'], most: LARGEST_METER_BYTES },
  { segments: ['usage', 'interval_csv', 'file'], most: LARGEST_METER_BYTES, fallback: 'latin1' },
]
