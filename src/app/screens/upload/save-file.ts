/** Hands a file to the browser to be saved; nothing leaves the tablet by itself. */
export function saveFile(bytes: Uint8Array<ArrayBuffer>, name: string, type = 'text/csv'): void {
  const url = URL.createObjectURL(new Blob([bytes], { type }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  // Some browsers read it a moment later.
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}
