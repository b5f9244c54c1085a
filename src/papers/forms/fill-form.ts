import { PDFHexString } from '@cantoo/pdf-lib'
import { digestOf } from '../../seal/index.js'
import { sortFindings, type Finding } from '../../worksheet/index.js'
import type { Sources } from './data/index.js'
import type { OpenForm } from './document/index.js'
import type { Fill, Trouble } from './filling.js'
import { formFindings } from './form-findings.js'
import { flattenForm, FormFonts } from './look/index.js'
import type { ReadMapping } from './mapping/index.js'
import { matchForm } from './match-form.js'
import { drawPlace, matchPlaces } from './placed/index.js'
import { planFill } from './plan-fill.js'
import { writeLooks, writeOtherLooks } from './write-looks.js'
import { writeValue } from './write-values.js'

/** A form that was filled in memory. */
export interface FilledForm {
  readonly fills: readonly Fill[]
  /** An error means that the form must not be used. */
  readonly findings: readonly Finding[]
  /**
   * The filled form. The same form with the same values gives the same bytes.
   *
   * @param flat Whether the fields become part of the pages and can no longer be filled.
   */
  readonly save: (flat: boolean) => Promise<Uint8Array>
}

/**
 * Fills a form, which is changed by it and can be filled once.
 *
 * @throws ProjectError when the mapping asks for what the form does not have or what is never filled.
 */
export async function fillForm(form: OpenForm, mapping: ReadMapping, sources: Sources): Promise<FilledForm> {
  const complaints = [...matchForm(mapping.data, form), ...matchPlaces(mapping.data, form)]
  if (complaints.length > 0) throw mapping.refuse(complaints)
  const { fills, findings } = await planFill(form, mapping.data, sources)
  const fonts = new FormFonts(form.pdf, form.acroForm)
  const seen = fills.flatMap((fill): Finding[] => {
    const troubles =
      fill.place === undefined ? writeField(fill, form, fonts) : drawPlace(form, fill.place, fill.filling, fonts)
    return troubles.map((trouble) => ({ ...trouble, where: '' }))
  })
  writeOtherLooks(form, new Set(fills.map(({ field }) => field.name)), fonts)
  fonts.finish()
  return {
    fills,
    findings: sortFindings([
      ...findings,
      ...seen,
      ...formFindings(form, mapping.data, fills),
      ...stageFindings(await sources.failing()),
    ]),
    save: async (flat) => {
      if (flat) flattenForm(form)
      const values = fills.map(({ field, filling, entry, place }) => [
        field.name,
        filling,
        place ?? entry.size_pt ?? null,
      ])
      form.pdf.context.trailerInfo.ID = fileId(form, JSON.stringify([values, flat]))
      return form.pdf.save({ useObjectStreams: false, addDefaultPage: false, updateFieldAppearances: false })
    },
  }
}

function writeField(fill: Fill, form: OpenForm, fonts: FormFonts): Trouble[] {
  writeValue(fill, form, fonts)
  return writeLooks(fill, fonts)
}

/** A design that fails its own checks should not be applied for. */
function stageFindings(failing: Awaited<ReturnType<Sources['failing']>>): Finding[] {
  return [...failing].map(([stage, count]) => ({
    severity: 'warning',
    id: 'form.stage-fails',
    message: `values come from ${stage}, where ${count === 1 ? 'one check fails' : `${count} checks fail`}`,
    where: '',
    fix: 'Run check-project and mend what fails before the form is sent',
  }))
}

/** Follows from form and values alone. */
function fileId(form: OpenForm, values: string): ReturnType<OpenForm['pdf']['context']['obj']> {
  const id = (...parts: string[]): PDFHexString => PDFHexString.of(digestOf(parts).slice(0, 32))
  return form.pdf.context.obj([id(form.sha256), id(form.sha256, values)])
}
