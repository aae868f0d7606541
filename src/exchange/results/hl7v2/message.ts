import type { FileProblem } from '../reported.ts';

/** The five signs by which a message is parted, as its own MSH says. Any may be unusual. */
export interface Delimiters {
  readonly field: string;
  readonly component: string;
  readonly repetition: string;
  readonly escape: string;
  readonly subcomponent: string;
}

/** One segment: `fields[0]` is its name; MSH-1 is the field separator itself, so numbers are HL7's. */
export interface Segment {
  readonly name: string;
  readonly fields: readonly string[];
}

export interface Message {
  readonly delimiters: Delimiters;
  readonly segments: readonly Segment[];
}

export type ReadMessages =
  | { readonly ok: true; readonly messages: readonly Message[] }
  | ({ readonly ok: false } & FileProblem);

/** A laboratory's message is a few kilobytes; a report of a whole house some hundreds. */
const MOST_SEGMENTS = 20_000;

/**
 * The messages of a file or of one transmission. HL7 v2.5.1 chapter 2: segments end with CR; LF and
 * CRLF, which editors leave, are taken too. Batch headers (FHS, BHS) and trailers are passed over.
 */
export function readMessages(text: string): ReadMessages {
  // The block signs of MLLP, where a gateway wrote its stream to a file as it was.
  const lines = text.replace(/^\uFEFF/, '').split(/[\r\n\u000b\u001c]+/);
  const messages: { delimiters: Delimiters; segments: Segment[] }[] = [];
  const broken = (segment: string, detail: string): ReadMessages => ({
    ok: false,
    problem: 'broken',
    detail,
    place: { at: 'segment', message: Math.max(1, messages.length), segment },
  });
  for (const line of lines) {
    if (line.trim() === '') continue;
    const name = line.slice(0, 3);
    if (/^(?:FHS|BHS|BTS|FTS)/.test(name)) continue;
    if (name === 'MSH') {
      const delimiters = delimitersIn(line);
      if (delimiters === undefined)
        return broken('MSH-2', 'MSH does not name five different separators, such as |^~\\&.');
      messages.push({ delimiters, segments: [] });
    }
    const current = messages.at(-1);
    if (current === undefined)
      return broken('MSH', 'The first segment is not MSH, so the separators are not known.');
    if (
      !/^[A-Z][A-Z0-9]{2}$/.test(name) ||
      (line.length > 3 && line[3] !== current.delimiters.field)
    )
      return broken(
        `segment ${current.segments.length + 1}`,
        'A line does not begin with a segment name.',
      );
    if (current.segments.length >= MOST_SEGMENTS)
      return {
        ok: false,
        problem: 'too-many',
        detail: `A message has over ${MOST_SEGMENTS} segments.`,
      };
    current.segments.push({ name, fields: fieldsOf(line, name, current.delimiters.field) });
  }
  return messages.length === 0
    ? { ok: false, problem: 'empty', detail: 'There is no message in it.' }
    : { ok: true, messages };
}

function fieldsOf(line: string, name: string, field: string): string[] {
  const fields = line.split(field);
  // MSH-1 is the separator after the name, which splitting has swallowed.
  return name === 'MSH' ? ['MSH', field, ...fields.slice(1)] : fields;
}

/** MSH-1 and MSH-2. Version 2.5.1 has four encoding characters; a fifth (2.7, truncation) is allowed. */
function delimitersIn(msh: string): Delimiters | undefined {
  const field = msh[3];
  if (field === undefined) return undefined;
  const end = msh.indexOf(field, 4);
  const encoding = msh.slice(4, end < 0 ? undefined : end);
  const [component, repetition = '\u0000', escape = '\u0000', subcomponent = '\u0000'] = encoding;
  if (component === undefined || encoding.length > 5) return undefined;
  const used = [field, ...Array.from(encoding)];
  // Letters, digits and spaces as separators would tear the words themselves.
  if (new Set(used).size !== used.length || used.some((sign) => /[\p{L}\p{N}\s]/u.test(sign)))
    return undefined;
  return { field, component, repetition, escape, subcomponent };
}

/** A field by HL7's number, its first repetition unless said; "" where there is none. */
export const fieldOf = ({ fields }: Segment, number: number): string => fields[number] ?? '';

export const repetitions = (field: string, { repetition }: Delimiters): string[] =>
  field.split(repetition);

/** A component by HL7's number (from 1), its first subcomponent, with escapes undone. */
export function component(field: string, number: number, delimiters: Delimiters): string {
  const whole = field.split(delimiters.component)[number - 1] ?? '';
  const text = unescaped(whole.split(delimiters.subcomponent)[0] ?? '', delimiters);
  // Two double quotes say "delete what you have", which is nothing to us.
  return text === '""' ? '' : text.trim();
}

/**
 * Chapter 2, section 7: \F\ \S\ \T\ \R\ \E\ and \Xhh…\ ; highlighting is dropped, line breaks are spaces.
 * An escape that is not known is left as it stands, so that nothing is lost.
 */
export function unescaped(text: string, delimiters: Delimiters): string {
  const { escape } = delimiters;
  if (escape === '\u0000' || !text.includes(escape)) return text;
  const parts = text.split(escape);
  let out = parts[0] ?? '';
  for (let i = 1; i < parts.length; i += 1) {
    const code = parts[i] ?? '';
    const closed = i < parts.length - 1;
    const meant = closed ? escapeMeans(code, delimiters) : undefined;
    if (meant === undefined) {
      out += `${escape}${code}`;
      continue;
    }
    i += 1;
    out += meant + (parts[i] ?? '');
  }
  return out;
}

function escapeMeans(code: string, d: Delimiters): string | undefined {
  const named: Readonly<Record<string, string>> = {
    ...{ F: d.field, S: d.component, T: d.subcomponent, R: d.repetition, E: d.escape },
    ...{ H: '', N: '', '.br': ' ', '.BR': ' ' },
  };
  if (Object.hasOwn(named, code)) return named[code];
  if (!/^X(?:[0-9A-Fa-f]{2})+$/.test(code)) return undefined;
  const bytes = Uint8Array.from(code.slice(1).match(/../g) ?? [], (hex) =>
    Number.parseInt(hex, 16),
  );
  return new TextDecoder('utf-8').decode(bytes);
}
