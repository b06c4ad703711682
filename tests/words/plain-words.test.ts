/**
 * The house style of words, as far as a list can hold it: one word for one thing, no turns that nobody says, American spelling,
 * sentences that can be read in one breath. It reads the pages, every text of the code that has a space in it, and what Excel shows.
 */
import { codeTexts, pageTexts, sentencesOf, type Text } from "./texts";
import { BRITISH, TURNS, type Turn, VALUES } from "./turns";

const code = codeTexts();
const pages = pageTexts();

test("the texts are found: pages, labels, messages and sentences", () => {
  const found = (text: string) => [...code, ...pages].filter((each) => each.text.includes(text)).map(({ at }) => at);
  expect(found("Already met at first check")).not.toEqual([]);
  expect(found("Local rules and licensed practice decide").map((at) => at.split(":")[0])).toEqual(
    expect.arrayContaining(["src/words/cautions.ts", "src/METHOD.md"]),
  );
  expect(found("Age counted from the day the baby was due").map((at) => at.split(":")[0])).toContain(
    "functions/ages.ts",
  );
  expect(code.length).toBeGreaterThan(2000);
});

test.each(TURNS)("nobody is told $stands: $write", (turn) => {
  expect(against(turn)).toEqual([]);
});

test("spelling is American", () => {
  expect(against(BRITISH)).toEqual([]);
});

test("the list finds what it is for", () => {
  const planted = (text: string) => TURNS.filter(({ stands }) => stands.test(text)).length;
  expect(planted("84.0% of the child-skills with a current look are met")).toBeGreaterThan(1);
  expect(planted("one row a child, and which is which is not told")).toBeGreaterThan(1);
  expect(planted("Of 7,615 up-to-date skill checks, 6,398 (84%) were met.")).toBe(0);
  expect(BRITISH.stands.test("the colour of the neighbouring centre")).toBe(true);
});

/** Words that a sentence of the pane, the report or the command line may have: more is two sentences. */
const MOST_WORDS = 45;

test(`no sentence of the code has more than ${MOST_WORDS} words`, () => {
  const long = code.flatMap(({ at, text }) =>
    sentencesOf(text)
      .filter((sentence) => sentence.split(" ").length > MOST_WORDS)
      .map((sentence) => `${at}: ${sentence}`),
  );
  expect(long).toEqual([]);
});

function against({ stands, except }: Turn): string[] {
  return [...code, ...pages]
    .filter(
      ({ at, text }) => stands.test(text) && !VALUES.has(text) && !(except ?? []).some((part) => at.includes(part)),
    )
    .map(shown);
}

function shown({ at, text }: Text): string {
  return `${at}: ${text.slice(0, 200)}`;
}
