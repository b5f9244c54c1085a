/**
 * A stage cannot do its work with this project: a safety input is missing, or the method does not reach this case.
 * The message is for the person; the command line turns it into exit code 2 with the place in the file.
 */
export class StageError extends Error {
  override readonly name = 'StageError'
  readonly where: string
  readonly fix: string

  /**
   * @param where Dotted path in project.yaml.
   * @param message What was found or is missing, and what is allowed.
   * @param fix What the person can do, and where the number is found.
   */
  constructor(where: string, message: string, fix: string) {
    super(message)
    this.where = where
    this.fix = fix
  }
}
