import type { Override } from './override.js'
import { isWithin, type Segments } from './path.js'
import { findKey, findSource, findValue, type Span, type YamlFile } from './yaml-file.js'

/** Where a value comes from. */
export type Location =
  | { readonly file: string; readonly line: number; readonly column: number; readonly length: number }
  | { readonly override: string }

/** Finds places in the project file, in the files merged under a part of it, and among the overrides. */
export interface Locator {
  /** The nearest place: that of the value, or of the innermost map around it that exists. */
  locate(segments: Segments, at: 'key' | 'value' | 'parent'): Location
  /** Whether the path stands in a file, apart from any override. */
  isInFile(segments: Segments): boolean
  sourceAt(segments: Segments): { readonly text: string; readonly quoted: boolean } | undefined
}

/** A file whose content stands under `mergedInto`. */
export interface MergedFile {
  readonly mergedInto: Segments
  readonly yaml: YamlFile
}

export function makeLocator(main: YamlFile, merged: readonly MergedFile[], overrides: readonly Override[]): Locator {
  const inMerged = (segments: Segments) =>
    merged
      .filter(({ mergedInto }) => isWithin(segments, mergedInto) && segments.length > mergedInto.length)
      .map(({ mergedInto, yaml }) => ({ yaml, inner: segments.slice(mergedInto.length) }))

  function spanIn(segments: Segments, at: 'key' | 'value'): Location | undefined {
    const find = (yaml: YamlFile, inner: Segments): Location | undefined => {
      const span: Span | undefined = at === 'key' ? findKey(yaml, inner) : findValue(yaml, inner)
      return span && { file: yaml.file, ...span }
    }
    const own = find(main, segments)
    if (own !== undefined) return own
    for (const { yaml, inner } of inMerged(segments)) {
      const found = find(yaml, inner)
      if (found !== undefined) return found
    }
    return undefined
  }

  function locate(segments: Segments, at: 'key' | 'value' | 'parent'): Location {
    const target = at === 'parent' ? segments.slice(0, -1) : segments
    // A key that is missing because an override took it away, or what holds it.
    const remover =
      at === 'parent' ? overrides.findLast((each) => each.removes && isWithin(segments, each.segments)) : undefined
    if (remover !== undefined) return { override: remover.name }
    const override = overrides.findLast((each) => !each.removes && isWithin(target, each.segments))
    if (override !== undefined) return { override: override.name }
    const span = spanIn(target, at === 'value' ? 'value' : 'key')
    if (span !== undefined && target.length > 0) return span
    // Something inside a map that only overrides have made.
    const maker = overrides.findLast((each) => !each.removes && isWithin(each.segments, target))
    if (maker !== undefined && target.length > 0) return { override: maker.name }
    if (target.length > 0) return locate(target.slice(0, -1), 'key')
    return span ?? { file: main.file, line: 1, column: 1, length: 1 }
  }

  return {
    locate,
    isInFile: (segments) => spanIn(segments, 'key') !== undefined,
    sourceAt(segments) {
      const location = locate(segments, 'value')
      if ('override' in location) return undefined
      const own = findSource(main, segments)
      if (own !== undefined) return own
      const [found] = inMerged(segments)
      return found && findSource(found.yaml, found.inner)
    },
  }
}
