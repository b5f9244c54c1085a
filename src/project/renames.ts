/** The version that took names of its own, and the one before it. */
export const FORMAT = 'gablewatt/2'
export const FORMAT_BEFORE = 'gablewatt/1'

export interface RenamedKey {
  /** The part of the project that holds the key. */
  readonly under: string
  readonly from: string
  readonly to: string
}

export interface RenamedValue {
  /** Dotted path of the value; `*` stands for any id. */
  readonly at: string
  readonly from: string
  readonly to: string
}

/** Keys of `gablewatt/1` and what they are called now. A removed name does not come back with another meaning. */
export const RENAMED_KEYS: readonly RenamedKey[] = [
  { under: 'losses', from: 'soiling_pct', to: 'dirt_pct' },
  { under: 'losses', from: 'mismatch_pct', to: 'unequal_modules_pct' },
  { under: 'losses', from: 'dc_wiring_pct', to: 'dc_cables_pct' },
  { under: 'losses', from: 'ac_wiring_pct', to: 'ac_cables_pct' },
  { under: 'losses', from: 'connections_pct', to: 'contacts_pct' },
  { under: 'losses', from: 'light_induced_pct', to: 'first_weeks_of_light_pct' },
  { under: 'losses', from: 'nameplate_pct', to: 'rating_shortfall_pct' },
  { under: 'losses', from: 'availability_pct', to: 'out_of_order_pct' },
  { under: 'losses', from: 'age_years', to: 'in_use_years' },
  { under: 'model', from: 'ashrae_b0', to: 'incidence_coefficient' },
  { under: 'model', from: 'temperature_a', to: 'back_rise_still_air' },
  { under: 'model', from: 'temperature_b', to: 'back_rise_per_wind' },
  { under: 'model', from: 'temperature_delta_c', to: 'cell_above_back_c' },
]

/** Values of `gablewatt/1` and what they are called now. */
export const RENAMED_VALUES: readonly RenamedValue[] = [
  { at: 'format', from: FORMAT_BEFORE, to: FORMAT },
  { at: 'model.incidence', from: 'physical', to: 'glass_layer' },
  { at: 'model.incidence', from: 'ashrae', to: 'one_coefficient' },
  { at: 'arrays.*.mounting', from: 'open_rack', to: 'free_rack' },
  { at: 'arrays.*.mounting', from: 'close_roof', to: 'near_roof' },
  { at: 'arrays.*.mounting', from: 'insulated_back', to: 'laid_on_roof' },
  { at: 'equipment.modules.*.construction', from: 'glass_polymer', to: 'polymer_back' },
  { at: 'equipment.modules.*.construction', from: 'glass_glass', to: 'glass_back' },
  { at: 'equipment.modules.*.construction', from: 'thin_film_steel', to: 'steel_back' },
]

/** Keys of `values.ladder` in results of `gablewatt-result/2` and what they are called now. */
export const RENAMED_LADDER: Readonly<Record<string, string>> = {
  soiling: 'dirt',
  nameplate: 'rating_shortfall',
  light_induced: 'first_weeks_of_light',
  age: 'years_in_use',
  mismatch: 'unequal_modules',
  connections: 'contacts',
  dc_wiring: 'dc_cables',
  ac_wiring: 'ac_cables',
  availability: 'out_of_order',
}
