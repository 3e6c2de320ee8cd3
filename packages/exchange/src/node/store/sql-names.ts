/** A name as SQL writes it, whatever characters it has. */
export function quoted(name: string): string {
  return `"${name.replaceAll('"', '""')}"`;
}

/** A text as SQL writes it. */
export function literal(text: string): string {
  return `'${text.replaceAll("'", "''")}'`;
}
