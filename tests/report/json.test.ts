import { reportJson } from "../../src/report/json";
import type { Report } from "../../src/report/report";
import { echoSettings, usualSettings } from "../../src/settings/settings";

const settings = { ...echoSettings(usualSettings), asOf: "2026-09-30", edges: [0, 3] };

const report: Report = {
  tool: { name: "Windowline", version: "0" },
  settings,
  input: [{ table: "Children", sheet: "__proto__", address: "A1:B3", rows: 2, used: 1, leftOut: { "exact copy": 1 } }],
  findings: [],
  tables: [
    {
      id: "agreement",
      title: 'A "title"',
      population: "all",
      columns: [{ key: "skill", label: "Skill", unit: "text" }],
      rows: [["a"], ["\u2028,[{"]],
      notes: ["n"],
    },
  ],
  provenance: { fingerprint: "f", records: [], sites: [], corrections: null, settings, version: "0", seed: 1 },
  print: {
    skills: [],
    curves: [],
    scannedMonths: [],
    trend: null,
    followed: 0,
    bridges: [],
    skipped: [],
    everFollowed: 0,
    decisions: [],
    counted: [],
  },
};

test("says in JSON exactly what the report holds, without what only print needs", () => {
  const { tool, settings, input, findings, tables, provenance } = report;
  expect(JSON.parse(reportJson(report))).toEqual({ tool, settings, input, findings, tables, provenance });
});

test("keys stand in their fixed order, and a row of a table on a line of its own", () => {
  const text = reportJson(report);
  expect(Object.keys(JSON.parse(text))).toEqual(["tool", "settings", "input", "findings", "tables", "provenance"]);
  expect(text.split("\n").filter((line) => line.trim() === '["a"],')).toHaveLength(1);
});
