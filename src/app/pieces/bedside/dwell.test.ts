import { describe, expect, it } from 'vitest';
import { viewDwell } from './dwell.ts';

// 10 s for a throat and 10 to 15 s for a nostril: common practice, no source. They come in as props.
const throat = { from: 10, to: 10 };
const nostril = { from: 10, to: 15 };

describe('the dwell dial', () => {
  it('does not say long enough a moment early', () => {
    expect(viewDwell(9.999, throat)).toMatchObject({ gone: 9, phase: 'short', toGo: 1 });
    expect(viewDwell(10, throat)).toMatchObject({ gone: 10, phase: 'enough', toGo: 0 });
  });

  it('has one bead for each second of the target', () => {
    expect(viewDwell(4.2, throat).beads.filter(Boolean)).toHaveLength(4);
    expect(viewDwell(4.2, nostril).beads).toHaveLength(15);
  });

  it('says when a range is passed, but not where one length is named', () => {
    expect(viewDwell(15.9, nostril).phase).toBe('enough');
    expect(viewDwell(16, nostril).phase).toBe('past');
    expect(viewDwell(40, throat).phase).toBe('enough');
  });

  it('starts empty, even from a clock that slips back', () => {
    expect(viewDwell(-3, nostril)).toMatchObject({ gone: 0, toGo: 10 });
  });
});
