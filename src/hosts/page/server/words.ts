export interface StartWords {
  readonly port: number;
  readonly open: boolean;
}

export const USUAL_PORT = 4173;

export const USAGE = `npm start -- [--port ${USUAL_PORT}] [--no-open]

Shows the page on this machine alone. --port 0 takes any free port; --no-open leaves the browser closed.`;

/** The words after the command; a message where one of them is not understood. */
export function startWords(words: readonly string[]): StartWords | { readonly message: string } {
  let port = USUAL_PORT;
  let open = true;
  const rest = [...words];
  for (let word = rest.shift(); word !== undefined; word = rest.shift()) {
    const [name, value] = word.split("=", 2) as [string, string?];
    if (name === "--no-open") open = false;
    else if (name === "--port") {
      const given = value ?? rest.shift() ?? "";
      if (!/^\d{1,5}$/.test(given) || Number(given) > 65_535) {
        return { message: "--port takes a number from 0 to 65535." };
      }
      port = Number(given);
    } else return { message: `${printable(name)} is not an option here.\n\n${USAGE}` };
  }
  return { port, open };
}

function printable(word: string): string {
  return word.replace(/[^\x20-\x7e]/g, "?").slice(0, 60);
}
