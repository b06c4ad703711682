import tseslint from "typescript-eslint";

/** The core computes: no clock, chance, locale, file, DOM, Node or Office in it (DEVELOPERS.md, "Rules"). */
const core = [
  "age",
  "statistics",
  "settings",
  "records",
  "cohort",
  "tables",
  "release",
  "report",
  "workbook",
  "sample",
].map((folder) => `src/${folder}/**/*.ts`);
const notInCore = [
  "window",
  "document",
  "process",
  "Office",
  "Excel",
  "fetch",
  "localStorage",
  "sessionStorage",
  "Intl",
  "Date",
];

export default tseslint.config(
  { ignores: ["dist/", "node_modules/", "coverage/", "reports/"] },
  ...tseslint.configs.recommended,
  {
    files: ["**/*.ts", "**/*.tsx"],
    rules: {
      "@typescript-eslint/no-explicit-any": "error",
      "@typescript-eslint/consistent-type-imports": "error",
      "@typescript-eslint/no-unused-vars": ["error", { argsIgnorePattern: "^_" }],
      "no-console": "error",
      eqeqeq: "error",
    },
  },
  {
    files: core,
    rules: {
      "no-restricted-globals": ["error", ...notInCore.map((name) => ({ name, message: `The core has no ${name}.` }))],
      "no-restricted-properties": [
        "error",
        { object: "Math", property: "random", message: "Chance comes in as a seeded argument." },
        { object: "Date", property: "now", message: "The core has no clock." },
      ],
      "no-restricted-syntax": [
        "error",
        {
          selector: "CallExpression[callee.property.name=/^toLocale|^localeCompare$/]",
          message: "The core knows no locale.",
        },
      ],
      "no-restricted-imports": ["error", { patterns: ["node:*", "fs", "path"] }],
    },
  },
  { files: ["functions/**/*.ts"], rules: { "@typescript-eslint/no-explicit-any": "off" } },
  { files: ["src/cli/**/*.ts", "bench/**", "tests/**", "**/*.mjs"], rules: { "no-console": "off" } },
);
