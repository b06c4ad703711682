import { RULES } from "./rules";

/** The page that lists every rule a finding can name, made from the rules themselves. */
export function findingsPage(): string {
  const rows = RULES.map(
    ({ id, severity, reason, explanation, advice }) =>
      `| \`${id}\` | ${severity} | ${explanation} | ${advice} | ${reason} |`,
  );
  return [
    "# Findings",
    "",
    "Every rule that a finding can name. *error*: the row is not used, and counted under the reason given. *warning*: used, a",
    "person should check it. *note*: information. `windowline check` ends with exit code 1 where there is an error or a warning.",
    "",
    "| rule | severity | what it finds | what to do | left out as |",
    "| --- | --- | --- | --- | --- |",
    ...rows,
    "",
  ].join("\n");
}
