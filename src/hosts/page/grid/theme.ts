import { defaultTheme } from "@univerjs/themes";

/** The grid's own controls in the page's one accent. */
export const PAGE_THEME: typeof defaultTheme = {
  ...defaultTheme,
  primary: {
    50: "#f1f6f9",
    100: "#e3edf2",
    200: "#c5dae4",
    300: "#9dc0d0",
    400: "#5f98b1",
    500: "#2f7593",
    600: "#0b4f6c",
    700: "#09435c",
    800: "#07374b",
    900: "#052a3a",
  },
};
