import type { PreparedRelease } from "../../release/prepared";
import { publishedAge } from "../../release/words/published-ages";
import type { WordsContext } from "../../release/words/words-context";

/** The published ages of the skills that a release names, each with its label; a skill without a source has none. */
export function publishedAges({ tables }: PreparedRelease, { skills }: WordsContext): { area: string; text: string }[] {
  const named = new Set(
    tables.flatMap(({ columns, rows }) => {
      const at = columns.findIndex(({ key }) => key === "skill");
      return at < 0 ? [] : rows.map((row) => row[at]);
    }),
  );
  return skills.flatMap((skill) => {
    const text = named.has(skill.id) ? publishedAge(skill) : null;
    return text === null ? [] : [{ area: skill.area, text }];
  });
}
