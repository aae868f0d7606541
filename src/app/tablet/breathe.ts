/** Work in one go, in ms, before touches and drawing get their turn: far below the 50 that are felt. */
const RUN_MS = 10;

/** For long work: asked now and then, it lets everything else that waits go first, if it is time. */
export function breather(monotonic: () => number): () => Promise<void> | undefined {
  let since = monotonic();
  return () => {
    if (monotonic() - since < RUN_MS) return undefined;
    return turn().then(() => {
      since = monotonic();
    });
  };
}

/** The end of the browser's queue; a timer would be held back by 4 ms each time. */
function turn(): Promise<void> {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      resolve();
    };
    port2.postMessage(undefined);
  });
}
