/** Hands the reader a file, under the name it is to be saved as. */
export function saveFile(name: string, content: Blob | string, type = 'text/plain'): void {
  const address = URL.createObjectURL(
    content instanceof Blob ? content : new Blob([content], { type: `${type};charset=utf-8` }),
  );
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // Long enough for slow disks; an address let go too soon saves an empty file in some browsers.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}

/** Words as a part of a file's name. */
export function fileWords(text: string): string {
  const plain = text
    .toLowerCase()
    .replace(/[^\p{Letter}\p{Number}]+/gu, '-')
    .replace(/^-|-$/g, '');
  return plain.slice(0, 60).replace(/-$/, '') || 'dive';
}
