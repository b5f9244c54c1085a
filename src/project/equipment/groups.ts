import { dereference, projectSchema, type Schema } from '../schema.js'

/** Kinds of equipment: the word of one piece, as the command line takes it, and the part of the file that holds them. */
export const EQUIPMENT_GROUPS = {
  module: 'modules',
  inverter: 'inverters',
  optimiser: 'optimisers',
  'trunk-cable': 'trunk_cables',
  rail: 'rails',
  mount: 'mounts',
  'storage-unit': 'storage_units',
} as const

/** Word of one piece of equipment. */
export type EquipmentKind = keyof typeof EQUIPMENT_GROUPS

export const EQUIPMENT_KINDS = Object.keys(EQUIPMENT_GROUPS) as readonly EquipmentKind[]

/** Parts of `equipment` that hold pieces keyed by ids, as the schema has them. */
export function groupsOfSchema(): string[] {
  const root = projectSchema()
  return Object.entries(dereference({ $ref: '#/$defs/equipment' }, root).properties ?? {})
    .filter(([, schema]) => typeof dereference(schema, root).additionalProperties === 'object')
    .map(([group]) => group)
}

/** Schema of one piece of a kind. */
export function schemaOfKind(kind: EquipmentKind): Schema {
  const root = projectSchema()
  const group = dereference({ $ref: '#/$defs/equipment' }, root).properties?.[EQUIPMENT_GROUPS[kind]]
  const entry = group?.additionalProperties
  if (typeof entry !== 'object') throw new Error(`the project schema has no ${EQUIPMENT_GROUPS[kind]}`)
  return dereference(entry, root)
}
