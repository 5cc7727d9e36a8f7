/** Where a command writes. With `--json`, `out` gets one JSON document and nothing else. */
export interface CommandIo {
  out(text: string): void;
  err(text: string): void;
}

/** @returns the exit status: 0 done, 1 done and the answer is no, 2 could not do it */
export type Command = (args: string[], io: CommandIo) => Promise<number>;
