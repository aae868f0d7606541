/**
 * A drawn face for each invented person: no two alike, none of anybody. Plain SVG as a data URL, so
 * that it travels like a small photo.
 */
export interface Features {
  readonly skin: string;
  readonly hair: string;
  readonly cut: 'short' | 'bob' | 'long' | 'bun' | 'bald' | 'curls';
  readonly top: string;
  readonly glasses?: boolean;
  readonly beard?: boolean;
}

const HAIR: Record<Features['cut'], string> = {
  short: 'M26 46c-2-22 10-32 24-32s26 10 24 32c-4-12-12-16-24-16s-20 4-24 16z',
  bob: 'M22 62c-6-34 8-50 28-50s34 16 28 50c-4 4-8 4-10 0 2-16-2-26-18-28-16 2-20 12-18 28-2 4-6 4-10 0z',
  long: 'M20 86c-6-52 6-74 30-74s36 22 30 74c-5 4-11 3-12-2 4-28 0-46-18-50-18 4-22 22-18 50-1 5-7 6-12 2z',
  bun: 'M40 12a10 9 0 1 1 20 0 24 22 0 0 1 14 34c-4-12-12-16-24-16s-20 4-24 16a24 22 0 0 1 14-34z',
  bald: 'M27 50c-3-6-3-10-1-14l3 8zM73 50c3-6 3-10 1-14l-3 8z',
  curls:
    'M24 54a9 9 0 0 1-2-16 11 11 0 0 1 8-16 13 13 0 0 1 20-6 13 13 0 0 1 20 6 11 11 0 0 1 8 16 9 9 0 0 1-2 16c-3-14-10-22-26-22s-23 8-26 22z',
};

const face = (f: Features): string => `
<rect width="100" height="100" fill="#e9e2d0"/>
<path d="M14 100c2-22 16-30 36-30s34 8 36 30z" fill="${f.top}"/>
<rect x="42" y="62" width="16" height="16" rx="6" fill="${f.skin}"/>
<ellipse cx="50" cy="50" rx="23" ry="27" fill="${f.skin}"/>
${f.beard === true ? `<path d="M28 54c2 22 12 28 22 28s20-6 22-28c-4 10-10 12-22 12s-18-2-22-12z" fill="${f.hair}"/>` : ''}
<path d="${HAIR[f.cut]}" fill="${f.hair}"/>
<g fill="#22292d"><circle cx="41" cy="50" r="2.4"/><circle cx="59" cy="50" r="2.4"/></g>
<g fill="none" stroke="#22292d" stroke-width="1.8" stroke-linecap="round">
<path d="M36 44q5-3 9 0M55 44q5-3 9 0M43 65q7 5 14 0M50 51l-2 7h4"/>
${f.glasses === true ? '<circle cx="41" cy="50" r="7.5"/><circle cx="59" cy="50" r="7.5"/><path d="M48.500 49h3"/>' : ''}
</g>`;

export const portrait = (features: Features): string =>
  `data:image/svg+xml,${encodeURIComponent(
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100 100">${face(features).replaceAll(/\n\s*/g, '')}</svg>`,
  )}`;
