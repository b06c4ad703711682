export const SOURCE_BASE: string;
export const BAD_ADDRESS: string;
export function baseAddress(text: string): string | null;
export function manifestAt(manifest: string, base: string): string;
