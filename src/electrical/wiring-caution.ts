import type { Job } from './job.js'

/** What a practitioner says once before the work: who connects, dead and locked out, who decides. */
export function addCaution(job: Job): void {
  job.worksheet.find({
    severity: 'note',
    id: 'wire.caution',
    message:
      'A licensed electrician makes or checks the connection to the panel; work only on conductors that are switched off, locked out and measured dead (modules stay live in daylight and the line side of the main stays live); the local code and the authority decide',
    where: '',
    source: { document: 'safety practice of the trade', standing: 'common practice, no source' },
  })
}
