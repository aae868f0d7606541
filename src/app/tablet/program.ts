/** The service worker that keeps the program on the tablet, and the newer one that may wait. */
export class Program {
  private registration: ServiceWorkerRegistration | undefined;
  private waiting: ServiceWorker | undefined;

  constructor(private readonly onReady: () => void) {}

  /** Keeps the program on the tablet from now on, and watches for a newer one. */
  async watch(): Promise<void> {
    this.registration = await register();
    const { registration } = this;
    if (!registration) return;
    const notice = () => {
      const { waiting } = registration;
      // Without a controller it is the first one, which is no update.
      if (!waiting || !navigator.serviceWorker.controller) return;
      this.waiting = waiting;
      this.onReady();
    };
    notice();
    registration.addEventListener('updatefound', () => {
      registration.installing?.addEventListener('statechange', notice);
    });
  }

  /** Asks the server whether there is a newer one. */
  async look(): Promise<void> {
    await this.registration?.update().catch(() => undefined);
  }

  /** Lets the newer one begin; the caller reloads. Waits until it has, for two seconds at most. */
  async begin(): Promise<void> {
    const { waiting } = this;
    if (!waiting) return;
    const begun = new Promise<void>((resolve) => {
      navigator.serviceWorker.addEventListener('controllerchange', () => resolve(), { once: true });
      setTimeout(resolve, 2000);
    });
    waiting.postMessage({ type: 'SKIP_WAITING' });
    await begun;
  }
}

/** Undefined where there are no service workers (no secure context), or none was built (development). */
async function register(): Promise<ServiceWorkerRegistration | undefined> {
  if (!('serviceWorker' in navigator)) return undefined;
  try {
    return await navigator.serviceWorker.register('/sw.js');
  } catch {
    return undefined;
  }
}
