/** How the bundles for a browser take TypeScript and JSX in: those of dist/, and the pages of the tests. */
export const webModule = {
  rules: [
    {
      test: /\.tsx?$/,
      exclude: /node_modules/,
      loader: "swc-loader",
      options: {
        jsc: {
          target: "es2022",
          parser: { syntax: "typescript", tsx: true },
          transform: { react: { runtime: "automatic" } },
        },
      },
    },
  ],
};
