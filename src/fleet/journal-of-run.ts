import { statSync } from 'node:fs'
import { basename, dirname, join, resolve } from 'node:path'
import { makeFolder, removeLeftOversBelow } from '../files/index.js'
import { digest } from './digest.js'
import { FleetError } from './fleet-error.js'
import type { FleetListener, FleetRequest } from './fleet-request.js'
import { openJournal, type Journal } from './journal.js'
import { FILE_NAMES, identityOf, type FleetPlan } from './plan.js'

/**
 * The journal of a run, undefined when none is wanted; where it cannot be written, a run that did not name it goes on
 * without.
 *
 * @throws FleetError when one that was named, or that a run shall go on from, cannot be used.
 */
export function journalOf(request: FleetRequest, plan: FleetPlan, { note, aside }: FleetListener): Journal | undefined {
  if (plan.outputFolder !== undefined) readyFolder(plan.outputFolder)
  if (request.journal === undefined) return undefined
  const identity = identityOf(plan)
  const path = request.journal.path ?? journalPath(request, identity)
  const resume = request.journal.resume === true
  if (!resume && (statSync(path, { throwIfNoEntry: false })?.size ?? 0) > 0) {
    note?.(`begun anew; --resume would have kept what ${path} says is done`)
  }
  try {
    const journal = openJournal({
      path,
      plan: identity,
      tool: plan.tool,
      useAnyway: request.journal.useAnyway === true,
      resume,
      ...(plan.outputFolder === undefined ? {} : { outputFolder: plan.outputFolder }),
    })
    if (journal.damaged.length > 0) note?.(sayDamaged(path, journal.damaged))
    return journal
  } catch (error) {
    if (!(error instanceof FleetError) || resume || request.journal.path !== undefined) throw error
    aside?.(`without a journal, so that --resume will not be possible: ${error.message}`)
    return undefined
  }
}

/** Makes the folder, and clears away what a run that was killed left half written in it. */
function readyFolder(folder: string): void {
  makeFolder(folder)
  try {
    removeLeftOversBelow(folder, FILE_NAMES)
  } catch {
    // What cannot be listed shows when it is written to.
  }
}

function sayDamaged(path: string, lines: readonly number[]): string {
  const first = lines.slice(0, 5).join(', ')
  const more = lines.length > 5 ? ` and ${lines.length - 5} more` : ''
  const which = lines.length === 1 ? `line ${first} is` : `lines ${first}${more} are`
  return `${path}: ${which} not as written; what it held is worked out again`
}

function journalPath({ projects, table, overrides, shard, output, journal }: FleetRequest, identity: string): string {
  const part = shard === undefined ? '' : `-${shard.part}of${shard.of}`
  const beside = journal?.beside
  if (beside !== undefined && isFileOrNew(beside)) {
    return join(dirname(beside), `.${basename(beside)}${part}.journal`)
  }
  if (output !== undefined) return join(output.folder, `.fleet${part}.journal`)
  const named = [...projects, table ?? ''].map((path) => resolve(path))
  return `.gablewatt-fleet-${digest([identity, ...named, ...(overrides ?? [])]).slice(0, 8)}${part}.journal`
}

/** A device has no place for a journal beside it. */
function isFileOrNew(path: string): boolean {
  return statSync(path, { throwIfNoEntry: false })?.isFile() ?? true
}

/** A journal is kept as long as something is left to be done. */
export function endJournal(journal: Journal | undefined, somethingLeft: boolean, { note }: FleetListener): void {
  if (journal === undefined) return
  if (!somethingLeft || journal.isEmpty()) journal.remove()
  else note?.('--resume goes on from here without working out again what is done')
}
