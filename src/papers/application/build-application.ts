import type { House } from '../../house/index.js'
import type { Project } from '../../project/index.js'
import { countFitted } from '../../roof/index.js'
import { APPLICATION_CLOCKS, STANDARD_FACTS } from '../../tables/utility/index.js'
import { formatSource, StageError, Worksheet, type Result } from '../../worksheet/index.js'
import { applicationFacts, type ApplicationFacts, type ApplicationStages } from './application-facts.js'
import { applicationFindings } from './application-findings.js'
import type { ApplicationValues } from './application-values.js'
import { answerFields } from './field-rule.js'
import { APPLICATION_FIELDS } from './fields/index.js'
import { findAttachments } from './find-attachments.js'

/**
 * All that applications for interconnection ask for, answered from a project and its stages. Nothing is guessed: what is
 * not there is a field without a value, with the key to state it under. Signature and its date stay blank.
 *
 * @param house The stages of the project, of `runHouse`; one that cannot run leaves its fields missing and is told.
 */
export async function buildApplication(project: Project, house: House): Promise<Result<ApplicationValues>> {
  const worksheet = new Worksheet()
  const stages: ApplicationStages = {
    wire: (await stage('size-wire', () => house.wire(), worksheet))?.values,
    yearKwh: (await stage('estimate-yield', () => house.yield(), worksheet))?.values.annual.ac_kwh,
    use: await yearlyUse(project, house),
  }
  return applicationOf(applicationFacts(countFitted(project), stages), worksheet)
}

/** The application from its facts alone. */
export function applicationOf(facts: ApplicationFacts, worksheet = new Worksheet()): Result<ApplicationValues> {
  const fields = answerFields(APPLICATION_FIELDS, facts)
  for (const finding of applicationFindings(facts, fields)) worksheet.find(finding)
  const countOf = (state: string): number => fields.filter((field) => field.state === state).length
  return worksheet.result({
    fields,
    attachments: findAttachments(facts),
    clocks: APPLICATION_CLOCKS.map(({ step, federalDays, newYorkDays, note }) => ({
      step,
      federal_business_days: federalDays,
      new_york_business_days: newYorkDays,
      note,
    })),
    standards: STANDARD_FACTS.map(({ says, source }) => ({ says, source: formatSource(source) })),
    stated: countOf('stated') + countOf('none'),
    missing: countOf('missing'),
  })
}

/** A stage that the application draws on; that it cannot run or fails a check is told. */
async function stage<Values>(
  command: string,
  run: () => Promise<Result<Values>>,
  worksheet: Worksheet,
): Promise<Result<Values> | undefined> {
  try {
    const result = await run()
    const errors = result.findings.filter(({ severity }) => severity === 'error').length
    if (errors > 0)
      worksheet.find({
        severity: 'warning',
        id: 'application.stage-fails',
        message: `the application rests on ${command}, where ${errors === 1 ? 'one check fails' : `${errors} checks fail`}`,
        where: '',
        fix: `Run ${command}, mend what fails, and write the application again`,
      })
    return result
  } catch (error) {
    if (!(error instanceof StageError)) throw error
    worksheet.find({
      severity: 'warning',
      id: 'application.stage-missing',
      message: `${command} cannot run, so that its figures are missing: ${error.message}`,
      where: error.where,
      fix: error.fix,
    })
    return undefined
  }
}

/** From the bills as they are stated; from meter readings where the bills can be worked out. */
async function yearlyUse({ usage }: Project, house: House): Promise<ApplicationStages['use']> {
  if (usage === undefined) return undefined
  if (usage.annual_kwh !== undefined) return { kwh: usage.annual_kwh, from: 'usage.annual_kwh' }
  if (usage.monthly_kwh !== undefined)
    return { kwh: usage.monthly_kwh.reduce((sum, each) => sum + each, 0), from: 'usage.monthly_kwh' }
  const from = usage.green_button === undefined ? 'usage.interval_csv' : 'usage.green_button'
  try {
    return { kwh: (await house.bill()).values.without.usage_kwh, from }
  } catch (error) {
    if (error instanceof StageError) return undefined
    throw error
  }
}
