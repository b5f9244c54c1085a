import type { Primitive } from './primitive.js'
import { ARTIFACT, type Tag } from './tag.js'

/** Puts primitives into a part where they are in none yet. */
export function inPart<P extends Primitive>(tag: Tag, primitives: readonly P[]): P[] {
  return primitives.map((each) => (each.tag === undefined ? { ...each, tag } : each))
}

/** Takes primitives out of what is read aloud. */
export function asArtifact<P extends Primitive>(primitives: readonly P[]): P[] {
  return primitives.map((each) => ({ ...each, tag: ARTIFACT }))
}
