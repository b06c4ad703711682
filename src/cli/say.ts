/** Progress on standard error when it is a terminal; nothing otherwise. */
export function progress(step: string): void {
  if (process.stderr.isTTY) process.stderr.write(`${step} …\n`);
}

/** Results alone on standard output. */
export function print(text: string): void {
  process.stdout.write(text.endsWith("\n") ? text : `${text}\n`);
}

export function complain(text: string): void {
  process.stderr.write(`${text}\n`);
}
