/** The requirement sets of manifest.xml: what the add-in may count on, and no more. */
export const MANIFEST_SETS = { excelapi: "1.12", customfunctionsruntime: "1.3", sharedruntime: "1.1" } as const;

/** What desktop Excel offers office.js at its start: who it is, and which requirement sets it has. */
export function richClient(sets: Readonly<Record<string, string>>): object {
  const nothing = () => undefined;
  const context = {
    GetAppType: () => 1,
    GetSolutionRef: () => "add-in",
    GetAppVersionMajor: () => 16,
    GetAppVersionMinor: () => 1,
    GetAppUILocale: () => 1033,
    GetAppDataLocale: () => 1033,
    GetDocUrl: () => "",
    GetAppCapabilities: () => 1,
    GetActivationMode: () => 2,
    GetControlIntegrationLevel: () => 1,
    GetSolutionToken: () => "",
    GetInitialDisplayMode: () => 2,
    GetSupportedMatrix: () => JSON.stringify(sets),
    GetSettings: () => ({ Read: nothing, Write: nothing }),
  };
  return {
    // 3: a shared runtime that also holds custom functions.
    GetHostInfo: () => "Excel|Win32|16.01|en-US|telemetry|||3",
    GetLoggingAllowed: () => false,
    GetContext: () => context,
    Execute: nothing,
    RegisterEvent: nothing,
    UnregisterEvent: nothing,
  };
}
