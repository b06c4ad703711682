import { ILocalStorageService, LocaleType, type Plugin, type PluginCtor, Univer } from "@univerjs/core";
import { FUniver } from "@univerjs/core/lib/facade";
import { LexerTreeBuilder, UniverSheetsCorePreset, UniverUIPlugin } from "@univerjs/preset-sheets-core";
import wording from "@univerjs/preset-sheets-core/locales/en-US";
import { type FunctionSurroundings, gridFunctions } from "../functions/grid-functions";
import { functionHelp } from "../functions/function-help";
import { MemoryStorage } from "./memory-storage";
import { mendLexer } from "./mend-lexer";
import { PAGE_THEME } from "./theme";

export interface GridOptions extends FunctionSurroundings {
  readonly container: HTMLElement;
  readonly dark: boolean;
}

type PresetEntry = ReturnType<typeof UniverSheetsCorePreset>["plugins"][number];

export interface GridParts {
  readonly univer: Univer;
  readonly api: FUniver;
  readonly container: HTMLElement;
}

/** Starts the spreadsheet in its container: formulas of our own, nothing kept in the browser, no request to anywhere. */
export function createGrid(options: GridOptions): GridParts {
  mendLexer(LexerTreeBuilder);
  const univer = new Univer({
    locale: LocaleType.EN_US,
    locales: { [LocaleType.EN_US]: wording },
    theme: PAGE_THEME,
    darkMode: options.dark,
  });
  const preset = UniverSheetsCorePreset({
    container: options.container,
    // Looks cannot be saved from here, so the page offers none.
    toolbar: false,
    footer: { menus: false, zoomSlider: false },
    disableAutoFocus: true,
    disableTextFormatAlert: true,
    disableTextFormatMark: true,
    sheets: { disableForceStringAlert: true, disableForceStringMark: true },
    formula: { function: gridFunctions(options) as never, description: functionHelp() },
  });
  for (const entry of preset.plugins) register(univer, entry);
  return { univer, api: FUniver.newAPI(univer), container: options.container };
}

function register(univer: Univer, entry: PresetEntry): void {
  const [plugin, config] = Array.isArray(entry) ? entry : [entry, undefined];
  const kept =
    plugin === UniverUIPlugin ? { ...config, override: [[ILocalStorageService, { useClass: MemoryStorage }]] } : config;
  univer.registerPlugin(plugin as PluginCtor<Plugin>, kept);
}
