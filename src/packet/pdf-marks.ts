/** Whether the mark of a PDF stands within the first 1024 bytes. */
export function startsAsPdf(bytes: Uint8Array): boolean {
  return Buffer.from(bytes.subarray(0, 1024)).includes('%PDF-')
}

/** Whether the mark of its end stands within the last 1024 bytes. */
export function endsAsPdf(bytes: Uint8Array): boolean {
  return Buffer.from(bytes.subarray(-1024)).includes('%%EOF')
}
