import type { House, HouseInput } from '../house/index.js'
import { IN_THIS_THREAD, type ForeignRunner, type ForeignSubject } from '../project/foreign/index.js'
import { sortFindings, type Finding } from '../worksheet/index.js'
import type { FilledField, FormFile, ListedForm, MappingFile } from './form-shapes.js'
import { FAILING, fillFormTask, listFormTask, type FillInput, type FillOutput } from './form-tasks.js'

/** A form before it is written. */
export interface PreparedForm {
  /** SHA-256 of the form, hexadecimal. */
  readonly sha256: string
  readonly fields: readonly FilledField[]
  /** A form with an error among them must not be used. */
  readonly findings: readonly Finding[]
  /** What of the form is left out. */
  readonly notes: readonly string[]
  /**
   * The filled form as a PDF; the same form with the same values gives the same bytes.
   *
   * @param flat Whether the fields become part of the pages and can no longer be filled.
   */
  readonly draw: (flat: boolean) => Promise<{ readonly pdf: Uint8Array; readonly notes: readonly string[] }>
}

/**
 * Reads the fields of a form.
 *
 * @param flatToo Whether pages without fields are taken, for a mapping with places.
 * @param runner Where the form is opened, of `inWorker`; in this thread and without limits of memory and time when left out.
 * @throws FileError with the reason when the form cannot be filled: no PDF, broken, locked, certified, signed, XFA alone.
 */
export async function listFormFields(
  file: FormFile,
  flatToo = false,
  runner: ForeignRunner = IN_THIS_THREAD,
): Promise<ListedForm> {
  return await runner.run(listFormTask, { file, flatToo }, subjectOf(file))
}

/**
 * Fills a form from a project and its stages. Signatures, their dates and declarations are never filled.
 *
 * @param house The stages of the project, of `runHouse`; only those run that the mapping asks for. Values that
 *   are made up and stand behind a field are told.
 * @param runner Where the form is opened, as for `listFormFields`.
 * @throws ProjectError for a bad mapping, FileError for a form that cannot be filled.
 */
export async function prepareForm(
  input: Pick<HouseInput, 'project' | 'madeUp'>,
  house: House,
  file: FormFile,
  mapping: MappingFile,
  runner: ForeignRunner = IN_THIS_THREAD,
): Promise<PreparedForm> {
  const [{ makeSources }, { formMadeUp }] = await Promise.all([import('./forms/index.js'), import('./form-made-up.js')])
  const sources = makeSources(input.project, house)
  const answer = (question: string): Promise<unknown> =>
    question === FAILING ? sources.failing() : sources.read(question)
  const fill = async (save: FillInput['save']): Promise<FillOutput> =>
    await runner.run(fillFormTask, { file, mapping, save }, subjectOf(file), answer)
  const filled = await fill('no')
  const made = formMadeUp(
    input,
    filled.fields.map(({ from }) => from),
  )
  return {
    sha256: filled.sha256,
    fields: filled.fields,
    findings: sortFindings([...filled.findings, ...made]),
    notes: filled.notes,
    draw: async (flat) => {
      const { saved } = await fill(flat ? 'flat' : 'with fields')
      if (saved === undefined) throw new Error('a form was filled and not saved')
      return saved
    },
  }
}

function subjectOf({ path, bytes }: FormFile): ForeignSubject {
  return { what: `form '${path}'`, bytes: bytes.length, fix: 'fetch it again from its publisher' }
}
