/** Asks the program that started a task, which has the project, for a value. */
export type Ask = (question: string) => Promise<unknown>

/**
 * Work on files of strangers that can be done in another thread: what goes in and out is plain data.
 * Its code is loaded when it runs.
 */
export interface ForeignTask<Input, Output> {
  /** One name in all of the program, by which the other thread finds it. */
  readonly name: string
  readonly work: (input: Input, ask: Ask) => Promise<Output>
}

/** What a task is about, for the message when it is given up. */
export interface ForeignSubject {
  /** `document 'letter.pdf'`. */
  readonly what: string
  readonly bytes: number
  /** What the person can do. */
  readonly fix: string
}

/** Where tasks are worked on. */
export interface ForeignRunner {
  /** @throws FileError when it takes more than the limits of a file of its size; otherwise what the task throws. */
  readonly run: <Input, Output>(
    task: ForeignTask<Input, Output>,
    input: Input,
    subject: ForeignSubject,
    ask?: Ask,
  ) => Promise<Output>
}

const NOTHING: Ask = (question) => Promise.reject(new Error(`nobody answers '${question}'`))

/** Works in the thread that asks, without limits of memory and time: for whoever knows the files, or has limits of his own. */
export const IN_THIS_THREAD: ForeignRunner = {
  run: (task, input, _subject, ask = NOTHING) => task.work(input, ask),
}
