import type { BeadState } from '../pieces/frame/bead-state.ts';
import type { FrameRowData, FrameStep } from '../pieces/frame/frame-data.ts';
import type { WireStep } from '../pieces/frame/wire-summary.ts';
import type { NavItem } from '../pieces/page/page-shell.tsx';
import type { Words } from '../words/en.ts';

/** Invented people, places and codes, for the gallery alone. */
export const service = 'Windlestraw House';
export const signedIn = 'Jonah Marsh, senior';

const nav: readonly NavItem[] = [
  { href: '?show=now', label: 'Now', current: true },
  { href: '?show=round', label: 'Rounds' },
  { href: '?show=people', label: 'People' },
  { href: '?show=results', label: 'Results' },
  { href: '?show=kits', label: 'Kits' },
  { href: '?show=more', label: 'More' },
];

export const navAt = (label: string): readonly NavItem[] =>
  nav.map((item) => ({ ...item, current: item.label === label }));

export const steps = ({ frame }: Words): readonly FrameStep[] =>
  Object.entries(frame.steps).map(([key, label]) => ({ key, label }));

const marks: Readonly<Record<string, BeadState>> = {
  o: 'todo',
  h: 'hand',
  '*': 'done',
  '-': 'unneeded',
  '!': 'look',
};

/** Beads from a short drawing, such as "***h-----". */
export const beads = (drawing: string): readonly BeadState[] =>
  Array.from(drawing, (sign) => marks[sign] ?? 'todo');

export const wire = (words: Words, drawing: string): readonly WireStep[] => {
  const states = beads(drawing);
  return steps(words).map((step, i) => ({ ...step, state: states[i] ?? 'todo' }));
};

export const round: readonly FrameRowData[] = [
  {
    key: 'oriel',
    name: 'Oriel',
    note: '10:04, both nostrils',
    href: '#oriel',
    beads: beads('******ooo'),
  },
  {
    key: 'tamsin',
    name: 'Tamsin',
    note: '10:21, throat and nose',
    href: '#tamsin',
    beads: beads('******ooo'),
  },
  {
    key: 'bram',
    name: 'Bram',
    note: 'asked not to today',
    href: '#bram',
    beads: beads('**-------'),
  },
  {
    key: 'ismay',
    name: 'Ismay',
    note: 'lid leaked: new kit needed',
    href: '#ismay',
    beads: beads('****!oooo'),
  },
  {
    key: 'corwen',
    name: 'Cor',
    note: 'now, with Pia and Jonah',
    href: '#corwen',
    current: true,
    beads: beads('**hoooooo'),
  },
  {
    key: 'hesper',
    name: 'Hesper',
    note: '11:05, after her walk',
    href: '#hesper',
    beads: beads('ooooooooo'),
  },
];

export const corwen = { name: 'Corwen Vale', called: 'Cor' };
export const helps = 'count aloud with him. Let him hold the tissue. Radio off.';
export const stopsWhen = 'he turns to the wall or hums.';
