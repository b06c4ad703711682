export default {
  testEnvironment: "node",
  roots: ["<rootDir>/tests"],
  setupFiles: ["<rootDir>/tests/support/seed.ts"],
  testMatch: ["**/*.test.ts", "**/*.test.tsx"],
  transform: {
    "^.+\\.(t|j|mj)sx?$": [
      "@swc/jest",
      {
        jsc: {
          target: "es2022",
          parser: { syntax: "typescript", tsx: true },
          transform: { react: { runtime: "automatic" } },
        },
        module: { type: "commonjs" },
      },
    ],
  },
  // The grid's other builds pull in modules that jest cannot require.
  moduleNameMapper: { "^@univerjs/(core|engine-formula|rpc)$": "<rootDir>/node_modules/@univerjs/$1/lib/umd/index.js" },
  transformIgnorePatterns: ["/node_modules/(?!(wasm-xlsxwriter)/)"],
  maxWorkers: 2,
  // A slow machine is no fault: only what hangs is stopped.
  testTimeout: 120_000,
  testEnvironmentOptions: { globalsCleanup: "off" },
};
