/** What a browser lacks, so that no tablet can be made of it. */
export type Missing = 'secure-context' | 'storage' | 'locks' | 'wasm';

/** Empty on any tablet that can be used. On plain HTTP under a LAN name the secure context is missing. */
export function whatIsMissing(): readonly Missing[] {
  const lacks: readonly (readonly [Missing, boolean])[] = [
    ['secure-context', !globalThis.isSecureContext],
    ['storage', typeof indexedDB === 'undefined'],
    ['locks', !('locks' in navigator)],
    ['wasm', typeof WebAssembly === 'undefined'],
  ];
  return lacks.filter(([, lacking]) => lacking).map(([what]) => what);
}
