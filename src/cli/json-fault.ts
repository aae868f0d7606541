/** What V8 says of a text that is right so far and only ends too early. */
const ENDS_EARLY = /Unexpected end|Unterminated string/;

const messageOf = (text: string): string | undefined => {
  try {
    JSON.parse(text);
    return undefined;
  } catch (error) {
    return (error as Error).message;
  }
};

const positionIn = (message: string): number | undefined => {
  const found = /at position (\d+)/.exec(message)?.[1];
  return found === undefined ? undefined : Number(found);
};

/** Whether a text could still become JSON if more came after it. */
function isSoundSoFar(text: string): boolean {
  const message = messageOf(text);
  return message === undefined || ENDS_EARLY.test(message) || positionIn(message) === text.length;
}

/** How many characters are sound: V8 does not always say where it stopped, so it is asked by halves. */
function soundLength(text: string): number {
  let [sound, wrong] = [0, text.length + 1];
  while (wrong - sound > 1) {
    const middle = Math.floor((sound + wrong) / 2);
    if (isSoundSoFar(text.slice(0, middle))) sound = middle;
    else wrong = middle;
  }
  return sound;
}

/**
 * Where a text that is not JSON goes wrong, in words with line and column, both from 1; undefined for
 * JSON.
 */
export function jsonFault(text: string): string | undefined {
  const message = messageOf(text);
  if (message === undefined) return undefined;
  const at = positionIn(message) ?? soundLength(text);
  const before = text.slice(0, at).split('\n');
  const place = `line ${before.length}, column ${(before.at(-1) ?? '').length + 1}`;
  if (at >= text.length) return `${place}: it ends too early`;
  // The position and the whole text again help nobody.
  return `${place}: ${message.replace(/ (?:in JSON )?at position \d+.*$/s, '').replace(/, "[\s\S]*$/, '')}`;
}
