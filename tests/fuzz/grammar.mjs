/** Makes values that follow a JSON Schema, most of them within its limits; the schema's own examples are the seeds. */
export class Grammar {
  #schema

  constructor(schema) {
    this.#schema = schema
  }

  /** A whole document. */
  document(chance) {
    return this.make(chance, this.#schema, 0)
  }

  /** One named part. */
  part(chance, name) {
    return this.make(chance, this.#schema.$defs[name], 0)
  }

  make(chance, given, depth) {
    const schema = given.$ref === undefined ? given : this.#schema.$defs[given.$ref.split('/').at(-1)]
    if (schema.const !== undefined) return schema.const
    if (schema.examples !== undefined && chance.chance(depth > 8 ? 1 : 0.35))
      return structuredClone(chance.of(schema.examples))
    if (schema.enum !== undefined) return chance.of(schema.enum)
    if (schema.anyOf !== undefined) return this.make(chance, chance.of(schema.anyOf), depth + 1)
    switch (schema.type) {
      case 'object':
        return this.#object(chance, schema, depth)
      case 'array':
        return this.#array(chance, schema, depth)
      case 'integer':
        return Math.round(numberIn(chance, schema))
      case 'number':
        return numberIn(chance, schema)
      case 'boolean':
        return chance.chance(0.5)
      default:
        return chance.of(['south', 'west', 'a', 'b1', 'x-1', 'm410', '06-01', '2026-03-02', 'every_day'])
    }
  }

  #object(chance, schema, depth) {
    const made = {}
    for (const [key, part] of Object.entries(schema.properties ?? {})) {
      const wanted = (schema.required ?? []).includes(key)
      // A rate sheet may hold later ones of its own kind: some level is the last.
      if (chance.chance(wanted ? 0.99 : depth > 12 ? 0 : depth > 5 ? 0.25 : 0.45))
        made[key] = this.make(chance, part, depth + 1)
    }
    if (typeof schema.additionalProperties === 'object') {
      for (let left = chance.below(3) + (schema.minProperties ?? 0); left > 0; left--) {
        made[chance.of(['south', 'west', 'a', 'b', 'b1', 'm410'])] = this.make(
          chance,
          schema.additionalProperties,
          depth + 1,
        )
      }
    }
    return made
  }

  #array(chance, schema, depth) {
    const least = schema.minItems ?? 0
    const most = Math.min(schema.maxItems ?? least + 4, least + 12)
    const length = least === most || depth > 12 || chance.chance(0.05) ? least : least + chance.below(most - least + 1)
    return Array.from({ length }, () => this.make(chance, schema.items ?? {}, depth + 1))
  }
}

function numberIn(chance, schema) {
  const low = schema.minimum ?? schema.exclusiveMinimum ?? -1000
  const high = schema.maximum ?? schema.exclusiveMaximum ?? 1000
  if (chance.chance(0.02)) return chance.of([low - 1, high + 1])
  if (chance.chance(0.15)) return chance.of([low, high])
  const example = schema.examples?.find((one) => typeof one === 'number')
  if (example !== undefined && chance.chance(0.7)) return example * (0.5 + chance.next())
  return low + (high - low) * chance.next() ** 3
}
