/** Set by the build of the program. */
declare const GABLEWATT_BUILD: string | undefined

/**
 * Which build of the program this is: 16 hexadecimal digits of the SHA-256 of its files, as a version number stays the same while
 * a program is changed; `source` where it runs without having been built.
 */
export const BUILD: string = typeof GABLEWATT_BUILD === 'string' ? GABLEWATT_BUILD : 'source'
