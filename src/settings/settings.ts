export { echoSettings, type SettingsEcho } from "./echo";
export { firstDayOfQuarter, type ParsedSettings, parseSettings, SETTING_NAMES } from "./parse";
export type { Settings } from "./shape";
export { usualSettings } from "./usual";
