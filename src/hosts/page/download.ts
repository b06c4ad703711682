const KEPT_MS = 60_000;

/** Hands bytes to the browser's own download: they stay on this machine. */
export function saveToDisk(fileName: string, bytes: Uint8Array, mimeType: string): void {
  const url = URL.createObjectURL(new Blob([bytes as Uint8Array<ArrayBuffer>], { type: mimeType }));
  const link = document.createElement("a");
  link.href = url;
  link.download = fileName;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), KEPT_MS);
}
