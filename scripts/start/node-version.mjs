const LEAST = [20, 19];

/** What to say of a Node that is too old; undefined when it will do. */
export function nodeFault(version) {
  const [major, minor] = version.split('.').map(Number);
  if (major > LEAST[0] || (major === LEAST[0] && minor >= LEAST[1])) return undefined;
  return `Tallyround needs Node ${LEAST.join('.')} or newer; this is ${version}. Get it from nodejs.org and start again.`;
}
