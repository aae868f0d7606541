import type { Picture, Shape } from './shapes.ts';
import { box, disc } from './shapes.ts';

const line = (d: string, wide = 3): Shape => ({ d, line: 'ink', wide });
const eyes = (x: number, y: number, gap = 8): Shape => ({
  d: `${disc(x - gap, y, 2.2)} ${disc(x + gap, y, 2.2)}`,
  fill: 'ink',
});

/** A head from the front, hair and shoulders; the mouth comes from each picture. */
const head = (x = 50, y = 42, cloth: Shape['fill'] = 'calm'): Picture => [
  { d: `M${x - 30} 98 q0 -28 30 -28 q30 0 30 28 z`, fill: cloth, line: 'ink', wide: 3 },
  { d: disc(x, y, 23), fill: 'skin', line: 'ink', wide: 3 },
  {
    d: `M${x - 23} ${y - 3} a23 23 0 0 1 46 0 q-9 -11 -23 -11 q-14 0 -23 11 z`,
    fill: 'hair',
    line: 'ink',
    wide: 2,
  },
  eyes(x, y),
];
const smile = line('M41 51 q9 9 18 0');
const nose = line('M50 43 q-4 7 0 8', 2.5);
const swab = (x: number, y: number, angle: 'right' | 'down' = 'right'): Picture =>
  angle === 'right'
    ? [
        line(`M${x + 6} ${y} h32`, 3),
        { d: box(x - 6, y - 4, 14, 8, 4), fill: 'paper', line: 'ink', wide: 2.5 },
      ]
    : [
        line(`M${x} ${y - 6} v-32`, 3),
        { d: box(x - 4, y - 8, 8, 14, 4), fill: 'paper', line: 'ink', wide: 2.5 },
      ];

const hand = (fill: Shape['fill']): Shape => ({
  d: 'M32 88 v-34 l-9 -12 q-2 -7 5 -6 l10 10 v-28 q4 -6 8 0 v22 v-28 q4 -6 8 0 v28 v-24 q4 -6 8 0 v26 v-16 q4 -6 8 0 v34 q-2 24 -18 28 z',
  fill: fill ?? 'skin',
  line: 'ink',
  wide: 3,
});

/** Every drawing, one idea each. All drawn for this program. */
export const pictures = {
  why: [
    ...head(38, 40),
    line('M31 51 q7 -5 14 0'),
    { d: box(75, 12, 12, 52, 6), fill: 'paper', line: 'ink', wide: 3 },
    { d: disc(81, 68, 11), fill: 'stop', line: 'ink', wide: 3 },
    { d: box(78.5, 32, 5, 34, 2.5), fill: 'stop' },
    line('M90 22 h5 M90 32 h5 M90 42 h5', 2.5),
  ],
  who: [
    { d: 'M12 98 q0 -24 20 -24 q20 0 20 24 z', fill: 'calm', line: 'ink', wide: 3 },
    { d: disc(32, 54, 16), fill: 'skin', line: 'ink', wide: 3 },
    eyes(32, 53, 6),
    line('M26 60 q6 6 12 0', 2.5),
    { d: 'M50 98 q0 -28 20 -28 q20 0 20 28 z', fill: 'cloth', line: 'ink', wide: 3 },
    { d: disc(70, 44, 17), fill: 'skin', line: 'ink', wide: 3 },
    eyes(70, 43, 6),
    line('M64 51 q6 6 12 0', 2.5),
  ],
  mask: [
    ...head(),
    { d: 'M30 44 q20 -8 40 0 v12 q-20 16 -40 0 z', fill: 'cloth', line: 'ink', wide: 3 },
    line('M30 46 l-5 -6 M70 46 l5 -6 M34 52 h32', 2),
  ],
  tissue: [
    ...head(),
    {
      d: 'M32 46 l12 -4 l8 4 l10 -4 l8 6 l-6 8 l6 10 l-14 -2 l-10 6 l-8 -8 l-10 2 z',
      fill: 'paper',
      line: 'ink',
      wide: 3,
    },
  ],
  throat: [...head(), { d: disc(50, 54, 7), fill: 'stop', line: 'ink', wide: 3 }, ...swab(52, 56)],
  nose: [...head(), nose, line('M43 58 h14'), ...swab(52, 51)],
  both: [
    ...head(),
    nose,
    line('M43 58 h14'),
    ...swab(52, 51),
    line('M14 42 q-6 8 2 14 M10 57 l6 0 l1 -6', 2.5),
  ],
  self: [
    ...head(40, 42),
    line('M32 56 q8 6 16 0'),
    ...swab(42, 49),
    { d: disc(86, 50, 8), fill: 'skin', line: 'ink', wide: 3 },
    line('M84 58 q-2 22 -18 30', 4),
  ],
  tube: [
    { d: box(36, 20, 28, 70, 13), fill: 'paper', line: 'ink', wide: 3 },
    { d: 'M38 62 h24 v14 q0 12 -12 12 q-12 0 -12 -12 z', fill: 'calm' },
    { d: box(32, 10, 36, 14, 3), fill: 'cloth', line: 'ink', wide: 3 },
    line('M50 30 v42', 3),
    { d: box(46, 66, 8, 14, 4), fill: 'paper', line: 'ink', wide: 2 },
  ],
  done: [
    { d: disc(50, 50, 38), fill: 'calm', line: 'ink', wide: 3 },
    { d: 'M32 51 l13 14 l24 -30', line: 'paper', wide: 8 },
  ],
  reward: [
    { d: box(22, 44, 56, 44, 3), fill: 'warm', line: 'ink', wide: 3 },
    { d: box(17, 32, 66, 14, 3), fill: 'warm', line: 'ink', wide: 3 },
    { d: box(44, 32, 12, 56), fill: 'stop', line: 'ink', wide: 2.5 },
    line('M50 32 q-22 -2 -18 -16 q14 -4 18 16 q4 -20 18 -16 q4 14 -18 16', 3),
  ],
  stop: [
    { d: 'M30 6 h40 l24 24 v40 l-24 24 h-40 l-24 -24 v-40 z', fill: 'stop', line: 'ink', wide: 3 },
    {
      ...hand('paper'),
      d: 'M35 78 v-28 l-7 -10 q-1 -6 4 -5 l8 9 v-22 q3 -5 6 0 v17 v-22 q3 -5 6 0 v22 v-19 q3 -5 6 0 v21 v-13 q3 -5 6 0 v27 q-1 18 -14 23 z',
    },
  ],
  wait: [
    { d: disc(50, 50, 38), fill: 'paper', line: 'ink', wide: 4 },
    line('M50 50 v-24 M50 50 l16 12', 5),
    { d: disc(50, 50, 4), fill: 'ink' },
    line('M50 14 v5 M50 81 v5 M14 50 h5 M81 50 h5', 3),
  ],
  result: [
    { d: box(22, 10, 56, 80, 4), fill: 'paper', line: 'ink', wide: 3 },
    line('M34 30 h32 M34 44 h32 M34 58 h20', 4),
    { d: disc(68, 74, 13), fill: 'calm', line: 'ink', wide: 3 },
    { d: 'M62 74 l5 5 l8 -10', line: 'paper', wide: 4 },
  ],
  room: [
    { d: 'M8 46 l42 -34 l42 34 v46 h-84 z', fill: 'paper', line: 'ink', wide: 3 },
    { d: box(18, 66, 44, 14, 4), fill: 'calm', line: 'ink', wide: 3 },
    { d: disc(28, 58, 8), fill: 'skin', line: 'ink', wide: 3 },
    line('M18 92 v-26 M62 92 v-18', 3),
    { d: box(70, 54, 14, 16), fill: 'warm', line: 'ink', wide: 2.5 },
  ],
  fault: [
    ...head(36, 44),
    line('M28 55 q8 7 16 0'),
    {
      d: 'M78 66 l-15 -15 q-8 -10 2 -16 q8 -4 13 5 q5 -9 13 -5 q10 6 2 16 z',
      fill: 'stop',
      line: 'ink',
      wide: 3,
    },
  ],
  ask: [
    ...head(34, 56, 'cloth'),
    line('M27 67 q7 6 14 0'),
    {
      d: 'M56 10 h36 q5 0 5 5 v26 q0 5 -5 5 h-18 l-12 12 v-12 h-6 q-5 0 -5 -5 v-26 q0 -5 5 -5 z',
      fill: 'paper',
      line: 'ink',
      wide: 3,
    },
    line('M68 22 q0 -7 7 -7 q7 0 7 7 q0 5 -7 7 v3', 3.5),
    { d: disc(75, 39, 2.2), fill: 'ink' },
  ],
  yes: [...head(), smile, line('M78 26 v20 M73 41 l5 6 l5 -6 M73 31 l5 -6 l5 6', 3)],
  help: [
    { d: hand('skin').d, fill: 'skin', line: 'ink', wide: 3 },
    { d: disc(76, 22, 14), fill: 'warm', line: 'ink', wide: 3 },
    eyes(76, 20, 5),
    line('M70 26 q6 6 12 0', 2.5),
  ],
} as const satisfies Record<string, Picture>;

export type PictureName = keyof typeof pictures;
