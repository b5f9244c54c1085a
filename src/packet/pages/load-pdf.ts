import { PDFDocument } from '@cantoo/pdf-lib'

/** Reads a PDF of a stranger as it is; what is broken in it is an error, and so is a lock only where it is asked for. */
export async function loadPdf(bytes: Uint8Array): Promise<PDFDocument> {
  return await PDFDocument.load(bytes, { updateMetadata: false, throwOnInvalidObject: true, ignoreEncryption: true })
}
