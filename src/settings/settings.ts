export {
  type Bearing,
  SETTING_CATALOGUE,
  SETTING_NAMES,
  type SettingDeclaration,
  type SettingName,
  settingsThatBearOn,
} from "./catalogue";
export { echoSettings, type SettingsEcho, usualWritten } from "./echo";
export { firstDayOfQuarter, type ParsedSettings, parseSettings } from "./parse";
export { type Settings, usualSettings } from "./shape";
