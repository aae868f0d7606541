const NAME = 'tallyround-tablet';

/**
 * One tab at a time holds a tablet. Safety does not rest on it (two tabs would only compare and set
 * again): it keeps two screens from showing two turns, and a locked tab from being open in another.
 */
export class OneTab {
  private letGo: () => void = () => undefined;

  /** `onLost`: another tab has taken it. */
  constructor(private readonly onLost: () => void) {}

  /** Takes the tablet if no other tab holds it, or from whichever does. */
  take(how: 'if-free' | 'from-another'): Promise<boolean> {
    const options = how === 'if-free' ? { ifAvailable: true } : { steal: true };
    return new Promise((resolve) => {
      navigator.locks
        .request(NAME, options, (lock) => {
          resolve(lock !== null);
          if (lock === null) return undefined;
          return new Promise<void>((done) => {
            this.letGo = done;
          });
        })
        .catch(() => {
          // Stolen: the one way in which a lock that was granted is lost.
          this.onLost();
        });
    });
  }

  release(): void {
    this.letGo();
  }
}
