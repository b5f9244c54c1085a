/**
 * The entry of a map under a key that a person wrote, or undefined. Only the map's own keys count: an id may be called
 * `constructor`, and a reference to nothing may too.
 */
export function own<Value>(
  map: Readonly<Record<string, Value>> | undefined,
  key: string | undefined,
): Value | undefined {
  return map !== undefined && key !== undefined && Object.hasOwn(map, key) ? map[key] : undefined
}
