/**
 * Is this certainly canonical text? Goes over the characters once and makes nothing of them. False
 * only says that it has to be looked at closely: letters beyond ASCII, escapes, long numbers. What
 * this lets through, `canonical.ts` would write the same (a test compares the two).
 */
export const plainlyCanonical = (text: string): boolean =>
  plain.test(text) && afterValue(text, 0, 0) === text.length;

export const MAX_DEPTH = 8;
/** Printable ASCII without the backslash: in a string, each such letter stands for itself. */
const plain = /^[ -[\]-~]+$/;
/** So many digits are a safe integer, whatever they are. */
const MAX_DIGITS = 15;
const [QUOTE, COMMA, MINUS, ZERO, NINE, COLON] = [0x22, 0x2c, 0x2d, 0x30, 0x39, 0x3a];
const [LIST, LIST_END, OBJECT, OBJECT_END] = [0x5b, 0x5d, 0x7b, 0x7d];
const WORDS = ['true', 'false', 'null'];
/** There is no such place: what was looked for is not there, or is not plain. */
const NOWHERE = -1;

/** Where a value that begins at a place is over. */
function afterValue(text: string, at: number, depth: number): number {
  const first = text.charCodeAt(at);
  if (first === QUOTE) return afterString(text, at + 1);
  if (first === OBJECT) return depth === MAX_DEPTH ? NOWHERE : afterObject(text, at + 1, depth + 1);
  if (first === LIST) return depth === MAX_DEPTH ? NOWHERE : afterList(text, at + 1, depth + 1);
  if (first === MINUS || (first >= ZERO && first <= NINE)) return afterNumber(text, at);
  const word = WORDS.find((each) => text.startsWith(each, at));
  return word === undefined ? NOWHERE : at + word.length;
}

/** With no backslash anywhere, the next quote is the end. */
function afterString(text: string, from: number): number {
  const end = text.indexOf('"', from);
  return end < 0 ? NOWHERE : end + 1;
}

function afterNumber(text: string, from: number): number {
  const digits = text.charCodeAt(from) === MINUS ? from + 1 : from;
  let at = digits;
  for (let code = text.charCodeAt(at); code >= ZERO && code <= NINE; code = text.charCodeAt(at))
    at += 1;
  const count = at - digits;
  if (count === 0 || count > MAX_DIGITS) return NOWHERE;
  // A leading nought is only nought itself, and never below it.
  const nought = text.charCodeAt(digits) === ZERO;
  return nought && (count > 1 || digits > from) ? NOWHERE : at;
}

function afterList(text: string, from: number, depth: number): number {
  if (text.charCodeAt(from) === LIST_END) return from + 1;
  for (let at = from; ; at += 1) {
    at = afterValue(text, at, depth);
    if (at === NOWHERE) return NOWHERE;
    const next = text.charCodeAt(at);
    if (next === LIST_END) return at + 1;
    if (next !== COMMA) return NOWHERE;
  }
}

function afterObject(text: string, from: number, depth: number): number {
  if (text.charCodeAt(from) === OBJECT_END) return from + 1;
  let before = '';
  for (let at = from; ; at += 1) {
    const end = afterKey(text, at);
    if (end === NOWHERE) return NOWHERE;
    const key = text.slice(at + 1, end - 2);
    if (key <= before) return NOWHERE;
    before = key;
    at = afterValue(text, end, depth);
    if (at === NOWHERE) return NOWHERE;
    const next = text.charCodeAt(at);
    if (next === OBJECT_END) return at + 1;
    if (next !== COMMA) return NOWHERE;
  }
}

/** A small letter, then letters and digits, in quotes, and a colon. */
function afterKey(text: string, from: number): number {
  if (text.charCodeAt(from) !== QUOTE || !isSmall(text.charCodeAt(from + 1))) return NOWHERE;
  let at = from + 2;
  for (let code = text.charCodeAt(at); isSmall(code) || isRest(code); code = text.charCodeAt(at))
    at += 1;
  const closed = text.charCodeAt(at) === QUOTE && text.charCodeAt(at + 1) === COLON;
  return closed ? at + 2 : NOWHERE;
}

const isSmall = (code: number): boolean => code >= 0x61 && code <= 0x7a;
const isRest = (code: number): boolean =>
  (code >= 0x41 && code <= 0x5a) || (code >= ZERO && code <= NINE);
