/** What to load, and what may be changed and named. */
export interface LoadOptions {
  /** Path of the project file; '-' takes `text`, or standard input when there is none. */
  readonly path: string
  readonly text?: string
  /** Each `path=value`, applied in this order before the project is checked. */
  readonly overrides?: readonly string[]
  /** Whether files outside the project's folder may be referenced. */
  readonly allowOutside?: boolean
  /** Folder that references are relative to; that of the project file, or the current one for '-'. */
  readonly baseFolder?: string
}
