/**
 * Lets the user choose one file. When they choose none this never settles: a window that is closed is no news, and a
 * browser that is driven by a program says it was closed before it hands the file over.
 */
export function chooseFile(accept: string): Promise<File> {
  return new Promise((resolve) => {
    const input = document.createElement('input');
    input.type = 'file';
    input.accept = accept;
    input.onchange = () => {
      const file = input.files?.[0];
      if (file) resolve(file);
    };
    input.click();
  });
}

/** Hands a text to the user as a file. */
export function downloadText(text: string, name: string, type = 'application/json'): void {
  const address = URL.createObjectURL(new Blob([text], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // The browser reads the address after the click has returned.
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}

/** File name of a book: its title in plain letters. */
export function fileNameOf(title: string): string {
  const plain = title
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
  return `${plain || 'book'}.pourbook.json`;
}
