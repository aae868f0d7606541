/** Where this tablet's facts are. `lastMet` is the instant it last met the server. */
export type SyncState =
  | { readonly kind: 'nothing' }
  /** Older records are still being read. */
  | { readonly kind: 'opening' }
  | { readonly kind: 'sent'; readonly count: number }
  | {
      readonly kind: 'kept' | 'sending';
      readonly count: number;
      readonly lastMet?: string | undefined;
    }
  | { readonly kind: 'trouble' };
