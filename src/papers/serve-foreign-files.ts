import { bindDocumentsTask, readDocumentTask } from '../packet/index.js'
import { serveForeign } from '../project/foreign/index.js'
import { fillFormTask, listFormTask } from './form-tasks.js'

/** In a thread with limits of memory and time: all the work on files of strangers that there is. */
export async function serveForeignFiles(): Promise<void> {
  await serveForeign([readDocumentTask, bindDocumentsTask, listFormTask, fillFormTask])
}
