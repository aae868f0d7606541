/** A code in groups of four for the eye; the last group may be shorter. */
export function codeGroups(code: string): readonly string[] {
  const signs = Array.from(code);
  const groups: string[] = [];
  for (let at = 0; at < signs.length; at += 4) groups.push(signs.slice(at, at + 4).join(''));
  return groups;
}

/** A code as typed by hand, made plain: no spaces, capitals, nothing else changed. */
export function plainCode(typed: string): string {
  return typed.replace(/\s+/g, '').toUpperCase();
}
