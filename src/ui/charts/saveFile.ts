import { downloadText } from '../files';

/** Hands a file to the browser to save. Nothing leaves the machine. */
export function saveFile(name: string, content: Blob): void {
  const address = URL.createObjectURL(content);
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}

export const saveText = (name: string, text: string, type: string): void => downloadText(text, name, type);
