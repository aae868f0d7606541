import type { Samples } from './shape.ts';

const day = '2026-11-26';

export const supplySamples: Samples['supplies'] = {
  kits: [12],
  usable: [118],
  usedUp: [1],
  unknownLot: [2],
  delivery: [day, 'WS-0417', 40],
  scanned: [38, 40],
  goOnScanningLot: ['WS-0417'],
  amendBoxLot: ['WS-0417'],
  unpack: {
    title: ['WS-0417'],
    done: [38, 40],
    fewer: [2],
    more: [1],
    list: [38],
    outCode: ['W, S, K'],
    picture: [38, 40],
  },
  lotPage: { title: ['WS-0417'], ended: [day], soon: [day] },
  countForm: { title: ['WS-0417'], lead: [14] },
  recallForm: { title: ['WS-0417'] },
  ppe: { rounds: [4], by: [day] },
  history: { box: [40, day] },
};
