/** The headers that tell from where a browser makes a call. */
export interface Provenance {
  readonly method: string;
  readonly fetchSite: string | undefined;
  readonly origin: string | undefined;
  /** This server as the browser addressed it, `https://host:port`. */
  readonly self: string;
}

const harmless = new Set(['GET', 'HEAD']);

/**
 * Whether a call may have come from the app's own page. Browsers say so themselves (Fetch Metadata;
 * older ones by Origin alone); a caller that says neither is no browser and carries no cookie of
 * somebody else's. Beside SameSite cookies and the session's key this is the third fence.
 */
export function fromOwnPage({ method, fetchSite, origin, self }: Provenance): boolean {
  if (fetchSite !== undefined && fetchSite !== 'same-origin')
    return harmless.has(method) && fetchSite === 'none';
  return harmless.has(method) || origin === undefined || origin === self;
}
