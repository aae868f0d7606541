import { it } from 'vitest';
import { neverThrowsNorHangs } from '../../../../test/fuzz/fuzz.ts';
import { drawingOf } from '../../../exchange/barcodes/svg-paths.ts';
import { watch, watching } from '../../camera/watch.ts';
import { codeGroups, plainCode } from './code-groups.ts';
import { burstKey, quiet, usualBurstRules } from './key-burst.ts';
import { typeEntry, typeStart } from './type-twice.ts';

it('a scanner may send any keys', () =>
  neverThrowsNorHangs((text) => {
    let state = quiet;
    for (const [i, key] of Array.from(text.slice(0, 400)).entries()) {
      ({ state } = burstKey(state, { key, at: i * 5 }, usualBurstRules));
    }
    return burstKey(state, { key: 'Enter', at: text.length * 5 }, usualBurstRules);
  }));

it('a hand may type anything, twice', () =>
  neverThrowsNorHangs((text) => typeEntry(typeEntry(typeStart, text, 4).state, text, 4)));

it('the camera may read anything', () =>
  neverThrowsNorHangs((text) =>
    watch(watching, [{ text, format: text, whole: true }], { at: 0, expect: 'label' }),
  ));

it('any code can be shown', () => neverThrowsNorHangs((text) => codeGroups(plainCode(text))));

it('what is no drawing of a symbol is told, and does not hang', () =>
  neverThrowsNorHangs((text) => {
    try {
      return drawingOf(`<svg viewBox="0 0 1 1">${text}</svg>`);
    } catch (error) {
      return error instanceof Error;
    }
  }));
