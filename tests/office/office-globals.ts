/// <reference types="office-js" />
import { nativeBridge, type NativeBridge } from "./bridge";
import { RichApiHost } from "./protocol/rich-api-host";
import { richClient } from "./rich-client";
import type { MemoryWorkbook } from "./workbook/memory-workbook";

let host: RichApiHost | null = null;

/** Makes a workbook in memory the one that office.js talks to from now on. */
export function openInOffice(workbook: MemoryWorkbook, payloadLimitBytes?: number): RichApiHost {
  host = new RichApiHost(workbook, payloadLimitBytes);
  return host;
}

/** What has to stand in the page before office.js is loaded. */
export function prepareOffice(sets: Readonly<Record<string, string>>): void {
  const page = globalThis as unknown as { external: object; _richApiNativeBridge: NativeBridge };
  Object.defineProperty(page, "external", { value: richClient(sets), configurable: true, writable: true });
  page._richApiNativeBridge = nativeBridge(() => {
    if (!host) throw new Error("openInOffice has not been called");
    return host;
  });
}

/** Has the client refuse every call beyond the requirement sets. Off by default in office.js. */
export function checkApiLevels(): void {
  (
    OfficeExtension as unknown as { CommonUtility: { _doApiNotSupportedCheck: boolean } }
  ).CommonUtility._doApiNotSupportedCheck = true;
}
