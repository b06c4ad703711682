export function manifestFaults(manifest: string, isBuilt: (file: string) => boolean): string[];
export function fileAsked(address: string): string;
export function registrationOf(
  platform: string,
  home: string,
  manifest: string,
  file: string,
):
  | { readonly kind: "file"; readonly file: string }
  | { readonly kind: "registry"; readonly add: readonly string[]; readonly remove: readonly string[] }
  | { readonly kind: "by hand"; readonly say: string };
