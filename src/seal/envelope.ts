import { BUILD } from './build-id.js'
import { SCHEMA_IDS } from './schema-ids.generated.js'
import { isWhole, sealed } from './seal.js'

/** What stands round everything that the program writes for itself or for others to rely on. */
export interface Envelope {
  readonly format: string
  /** Name and version of the program. */
  readonly tool: string
  /** `BUILD` of the program. */
  readonly build: string
  /** Fingerprint of the schema of what it holds; null where there is none. */
  readonly schema: string | null
}

/** Fingerprint of the schema of a kind of content: the stage of a result, `fleet-line`, `fleet-baseline`. */
export function schemaOf(kind: string): string | null {
  return Object.hasOwn(SCHEMA_IDS, kind) ? (SCHEMA_IDS[kind] ?? null) : null
}

/** @param kind Of `schemaOf`. */
export function envelopeOf(format: string, tool: string, kind: string): Envelope {
  return { format, tool, build: BUILD, schema: schemaOf(kind) }
}

/** The data in their envelope, with the seal as the last key. */
export function inEnvelope<Data extends object>(
  envelope: Envelope,
  data: Data,
): Envelope & Data & { readonly seal: string } {
  return sealed({ ...envelope, ...data })
}

/** What an envelope says of its content to this build of the program. */
export interface Standing {
  /** Whether it is what was written. */
  readonly isWhole: boolean
  /** Whether its schema is that of this build. */
  readonly fits: boolean
  /** The build that wrote it, where that is another. */
  readonly otherBuild: string | undefined
}

/**
 * Looks at an envelope that was read.
 *
 * @param kind Of `schemaOf`.
 */
export function standingOf(data: Readonly<Record<string, unknown>>, kind: string): Standing {
  const { build, schema } = data
  return {
    isWhole: isWhole(data),
    fits: (schema ?? null) === schemaOf(kind),
    otherBuild: build === BUILD ? undefined : typeof build === 'string' ? build : 'without a name',
  }
}

/** `build 0123456789abcdef`, for messages. */
export function sayBuild(build: string): string {
  return /^[0-9a-f]{16}$/u.test(build)
    ? `build ${build}`
    : build === 'source'
      ? 'a build from source'
      : 'an unknown build'
}
