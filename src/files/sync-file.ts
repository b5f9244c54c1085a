import { fsyncSync } from 'node:fs'

/**
 * Waits until what was written is on the disk. Confined by its permission model the engine refuses that (`--untrusted`); the
 * file is whole all the same, it only may be lost with the power.
 */
export function syncFile(file: number): void {
  try {
    fsyncSync(file)
  } catch (error) {
    if (!(error instanceof Error) || !('code' in error) || error.code !== 'ERR_ACCESS_DENIED') throw error
  }
}
