import { type BrandVariants, createDarkTheme, createLightTheme, type Theme } from "@fluentui/react-components";

/** Shades of the one accent, from ink to paper. */
const ACCENT: BrandVariants = {
  10: "#020D13",
  20: "#06202C",
  30: "#07303F",
  40: "#083C50",
  50: "#09455E",
  60: "#0A4A65",
  70: "#0B4F6C",
  80: "#0B4F6C",
  90: "#2A6A87",
  100: "#44829F",
  110: "#5C99B4",
  120: "#74AEC7",
  130: "#8CC1D7",
  140: "#A6D2E4",
  150: "#C3E3F0",
  160: "#E2F2F8",
};

const READING = "'Segoe UI', system-ui, -apple-system, 'Helvetica Neue', sans-serif";

/** Words say what is wrong, never a hue: what Fluent would paint red is ink. */
function withoutAlarm(theme: Theme, ink: string): Theme {
  return {
    ...theme,
    fontFamilyBase: READING,
    colorPaletteRedForeground1: ink,
    colorPaletteRedForeground3: ink,
    colorPaletteRedBorder2: ink,
    colorPaletteDarkOrangeForeground1: ink,
    colorStatusDangerForeground1: ink,
    colorStatusDangerBorder2: ink,
  };
}

export const lightTheme: Theme = {
  ...withoutAlarm(createLightTheme(ACCENT), "#1A1A1A"),
  colorNeutralForeground1: "#1A1A1A",
  colorNeutralForeground2: "#333333",
  colorNeutralForeground3: "#505050",
  colorNeutralBackground1: "#FFFFFF",
};

const dark = withoutAlarm(createDarkTheme(ACCENT), "#ECEAE4");

export const darkTheme: Theme = {
  ...dark,
  colorNeutralForeground1: "#ECEAE4",
  colorNeutralForeground2: "#D8D6D0",
  colorNeutralForeground3: "#B4B2AC",
  colorNeutralBackground1: "#16191B",
  colorBrandForeground1: "#8CC1D7",
  colorBrandForeground2: "#8CC1D7",
  colorCompoundBrandForeground1: "#8CC1D7",
  colorCompoundBrandStroke: "#8CC1D7",
  colorCompoundBrandBackground: "#8CC1D7",
  colorNeutralForegroundInverted: "#16191B",
};
