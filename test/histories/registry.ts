import { homeFold, readStored } from '../../src/procedures/home-fold.ts';
import { homeModel } from '../simulation/home-model.ts';
import type { Replayed } from './replay.ts';

/** Which history goes through which fold. */
// eslint-disable-next-line @typescript-eslint/no-explicit-any -- each entry has a state of its own
export const replayed: readonly Replayed<any, any>[] = [
  {
    history: 'model-2026-11.jsonl',
    name: 'model',
    fold: { ...homeModel.fold, fold: 2 },
    read: homeModel.read(2),
  },
  {
    history: 'home-2026-11.jsonl',
    name: 'home',
    fold: homeFold({ zone: 'Europe/London', policies: [] }),
    read: readStored,
  },
];
