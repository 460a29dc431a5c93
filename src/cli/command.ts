/** One command of the command line. */
export interface Command {
  readonly name: string;
  /** One line for the list of commands. */
  readonly summary: string;
  /** How it is called, without the program's name. */
  readonly usage: string;
  /**
   * Does the work with the arguments after the command's name.
   *
   * @returns the exit code
   */
  run(args: readonly string[]): Promise<number>;
}
