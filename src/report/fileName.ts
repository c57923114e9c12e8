/** A name any file system takes: letters, digits, hyphens. */
export function fileNameFrom(name: string): string {
  return (
    name
      .normalize('NFKD')
      .replaceAll(/[^\w]+/g, '-')
      .replaceAll(/^-+|-+$/g, '')
      .toLowerCase() || 'quietpour'
  );
}
