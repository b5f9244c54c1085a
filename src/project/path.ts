/** Steps from the root of the project data to a value: keys of maps, and indexes of lists counted from 0. */
export type Segments = readonly (string | number)[]

/** `['arrays', 'south', 'strings', 0]` as people write it: `arrays.south.strings.0`. */
export function formatPath(segments: Segments): string {
  return segments.join('.')
}

/** Splits `arrays.south.strings.0.modules`, and also `arrays.south.strings[0].modules`. */
export function splitPath(path: string): string[] {
  return path.replaceAll(/\[(\d+)\]/g, '.$1').split('.')
}

/** Whether `inner` is `outer` or lies below it. */
export function isWithin(inner: Segments, outer: Segments): boolean {
  return outer.length <= inner.length && outer.every((segment, i) => String(segment) === String(inner[i]))
}
