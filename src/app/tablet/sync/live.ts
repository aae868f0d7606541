/** How far the server's ledger has grown, as it says itself. */
export interface LiveHead {
  readonly position: number;
  readonly chain: string;
}

const RETRY_MS = 5000;

/** Listens for the server's head. EventSource comes back by itself after a lost line, not after a refusal. */
export function listenLive(by: {
  readonly head: (head: LiveHead) => void;
  readonly open: (isOpen: boolean) => void;
}): () => void {
  let source: EventSource | undefined;
  let timer: ReturnType<typeof setTimeout> | undefined;
  const listen = () => {
    source = new EventSource('/live');
    source.addEventListener('open', () => by.open(true));
    source.addEventListener('head', ({ data }: MessageEvent<string>) => {
      by.head(JSON.parse(data) as LiveHead);
    });
    source.addEventListener('error', () => {
      by.open(false);
      if (source?.readyState === EventSource.CLOSED) timer = setTimeout(listen, RETRY_MS);
    });
  };
  listen();
  return () => {
    clearTimeout(timer);
    source?.close();
  };
}
