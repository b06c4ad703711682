/** Who may import whom: the table of DEVELOPERS.md, one line a folder. Arrows carry through. */
const below = {
  age: [],
  words: ["age"],
  statistics: [],
  workbook: [],
  settings: ["age", "words"],
  records: ["age", "words", "settings", "statistics", "workbook"],
  cohort: ["age", "words", "settings", "statistics", "records", "workbook"],
  tables: ["age", "words", "settings", "statistics", "records", "cohort", "workbook"],
  release: ["age", "words", "settings", "statistics", "records", "cohort", "tables", "workbook"],
  report: ["age", "words", "settings", "statistics", "records", "cohort", "tables", "release", "workbook"],
  sample: ["age", "words", "statistics", "workbook"],
};

const onlyBelow = Object.entries(below).map(([folder, allowed]) => ({
  name: `${folder}-imports-only-what-is-below`,
  severity: "error",
  from: { path: `^src/${folder}/` },
  to: { path: "^(src|functions|taskpane|bench)/", pathNot: `^src/(${[folder, ...allowed].join("|")})/` },
}));

export default {
  forbidden: [
    ...onlyBelow,
    { name: "no-cycles", severity: "error", from: {}, to: { circular: true } },
    {
      name: "functions-stay-on-the-core",
      severity: "error",
      from: { path: "^functions/" },
      to: {
        path: "^(src|taskpane|bench)/",
        pathNot: "^src/(settings|age|words|records|cohort|statistics|tables|release|workbook)/",
      },
    },
    {
      name: "no-host-imports-another",
      severity: "error",
      from: { path: "^src/hosts/([^/]+)/" },
      to: { path: "^src/hosts/", pathNot: "^src/hosts/$1/" },
    },
    {
      name: "hosts-come-to-the-pane-by-its-entries",
      severity: "error",
      from: {
        path: "^taskpane/",
        pathNot: "^taskpane/(start-|page/|worker/(read-file|write-file|release/release-files))",
      },
      to: { path: "^src/hosts/" },
    },
    {
      name: "nothing-imports-the-command-line",
      severity: "error",
      from: { pathNot: "^(src/cli|tests|bench)/" },
      to: { path: "^src/cli/" },
    },
    {
      name: "the-core-imports-no-node",
      severity: "error",
      from: {
        path: "^(src/(age|words|statistics|settings|records|cohort|tables|release|report|workbook|sample)|functions)/",
      },
      to: { dependencyTypes: ["core"] },
    },
    {
      name: "resolvable",
      severity: "error",
      from: {},
      // optional packages, which may not be installed
      to: { couldNotResolve: true, pathNot: "^(@duckdb/node-api|better-sqlite3|pg)$" },
    },
  ],
  options: {
    doNotFollow: { path: "node_modules" },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: "tsconfig.json" },
    enhancedResolveOptions: { exportsFields: ["exports"], conditionNames: ["import", "require", "node", "default"] },
  },
};
