import { startWords, USUAL_PORT } from "../../../src/hosts/page/server/words";

test.each([
  [[], { port: USUAL_PORT, open: true }],
  [["--no-open"], { port: USUAL_PORT, open: false }],
  [["--port", "8080"], { port: 8080, open: true }],
  [["--port=0", "--no-open"], { port: 0, open: false }],
])("%j", (words, asked) => expect(startWords(words)).toEqual(asked));

test.each([[["--port"]], [["--port", "http"]], [["--port", "70000"]], [["--port", "-1"]], [["--open"]], [["4173"]]])(
  "%j is refused with words",
  (words) => expect(startWords(words)).toEqual({ message: expect.stringMatching(/--port/) }),
);
