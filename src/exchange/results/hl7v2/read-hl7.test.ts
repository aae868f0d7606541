import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readHl7 } from './read-hl7.ts';

const zone = 'Europe/London';
const read = (text: string) => readHl7(text, { zone });
const must = (text: string) => {
  const found = read(text);
  if (!found.ok) throw new Error(found.detail);
  return found.reports;
};

export const oru = (more: { value?: string; status?: string; born?: string } = {}) =>
  [
    'MSH|^~\\&|LIS|DEMOLAB|TALLY|HOME|20260304101500+0000||ORU^R01^ORU_R01|M1|P|2.5.1',
    `PID|1||H1^^^HOME||Finch^Oriel||${more.born ?? '19410602'}|F`,
    'OBR|1|R-100^HOME|L-77^DEMOLAB|94500-6^SARS-CoV-2 RNA^LN|||20260303093000|||||||||||||||20260304100000+0000|||F',
    `OBX|1|CWE|94500-6^SARS-CoV-2 RNA^LN||${more.value ?? '260385009^Not detected^SCT'}||||||${more.status ?? 'F'}`,
    'SPM|1|KQT00000019^L-77||258500001^Swab^SCT',
  ].join('\r');

describe('an observation that the laboratory took back (OBX-11, table 0085: D deleted, W wrong)', () => {
  const two = (status: string, order = 'F') =>
    oru({ value: '10828004^Positive^SCT', status })
      .replace('|||F\rOBX', `|||${order}\rOBX`)
      .replace('\rSPM', '\rOBX|2|CWE|92142-9^Flu A^LN||260385009^Negative^SCT||||||F\rSPM');

  it.each(['W', 'D', 'w'])('says nothing of the rest of its order: %s', (status) => {
    for (const order of ['F', 'C'])
      expect(must(two(status, order))[0]).toMatchObject({
        ...{ outcome: 'negative', said: 'Negative', status: 'corrected', tests: ['92142-9'] },
      });
  });
  it('takes the whole result back where nothing else is left', () => {
    expect(must(oru({ status: 'W' }))[0]).toMatchObject({
      outcome: 'withdrawn',
      tests: ['94500-6'],
    });
  });
  it('counts as long as it stands', () => {
    expect(must(two('F', 'C'))[0]).toMatchObject({ outcome: 'positive', status: 'corrected' });
  });
  it('does not make a final result of what is still preliminary beside it', () => {
    const open = two('W', 'C').replace('Negative^SCT||||||F', 'Negative^SCT||||||P');
    expect(must(open)[0]).toMatchObject({ outcome: 'negative', status: 'preliminary' });
  });
});

describe('HL7 v2.5.1 ORU^R01', () => {
  it('gives code, outcome, day, person and numbers, with the place', () => {
    expect(must(oru())).toEqual([
      {
        place: { at: 'segment', message: 1, segment: 'OBR[1]' },
        codes: ['KQT00000019', 'R-100'],
        outcome: 'negative',
        said: 'Not detected',
        status: 'final',
        reported: '2026-03-04',
        name: 'Oriel Finch',
        born: '1941-06-02',
        reference: 'R-100',
        report: 'L-77',
        laboratory: 'DEMOLAB',
        tests: ['94500-6'],
        asks: [],
      },
    ]);
  });
  it('takes any separators that the message itself names', () => {
    const odd = oru()
      .replaceAll('|', '#')
      .replaceAll('^', '$')
      .replace('$~\\&', '$*%@')
      .replaceAll('\r', '\n');
    expect(must(odd)).toEqual(must(oru()));
  });
  it('undoes escapes, and leaves one it does not know as it stands', () => {
    const text = oru().replace('Finch^Oriel', 'Fin\\T\\ch\\X2D\\Gale^Or\\Z9\\iel');
    expect(must(text)[0]?.name).toBe('Or\\Z9\\iel Fin&ch-Gale');
  });
  it('a code and words that contradict each other are asked about', () => {
    const [report] = must(oru({ value: '260385009^Detected^SCT' }));
    expect(report?.outcome).toBeUndefined();
    expect(report?.asks).toContainEqual({ ask: 'words-unknown', given: 'Detected' });
  });
  it('knows corrected, withdrawn and preliminary', () => {
    expect(must(oru({ status: 'C' }))[0]?.status).toBe('corrected');
    expect(must(oru({ status: 'W' }))[0]).toMatchObject({
      status: 'withdrawn',
      outcome: 'withdrawn',
    });
    expect(must(oru({ status: 'P' }))[0]?.status).toBe('preliminary');
  });
  it('takes the day in the zone of the service, and a birth date as it stands', () => {
    const late = oru().replace('20260304100000+0000', '20260304233000-0500');
    expect(must(late)[0]).toMatchObject({ reported: '2026-03-05', born: '1941-06-02' });
    expect(must(oru({ born: '19410231' }))[0]?.asks).toContainEqual({
      ask: 'day-unclear',
      about: 'born',
      given: '19410231',
      why: 'not-a-date',
    });
  });
  it('turns away what is no result, with its place', () => {
    expect(read(oru().replace('ORU^R01', 'ADT^A01'))).toMatchObject({
      ok: false,
      problem: 'not-results',
    });
    expect(read('PID|1')).toMatchObject({ ok: false, problem: 'broken' });
    expect(read('MSH|||||')).toMatchObject({ ok: false, place: { segment: 'MSH-2' } });
    expect(read('')).toMatchObject({ ok: false, problem: 'empty' });
  });
  it('a message cut off anywhere never throws, and never says more than the whole', () => {
    const whole = oru();
    for (let end = 0; end < whole.length; end += 1) {
      const found = read(whole.slice(0, end));
      if (found.ok) expect(['negative', undefined]).toContain(found.reports[0]?.outcome);
    }
  });
  it('never throws, whatever comes', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: 'binary', maxLength: 400 }),
        (text) => typeof read(text).ok === 'boolean',
      ),
    );
    fc.assert(
      fc.property(
        fc.string({ maxLength: 200 }),
        (text) => typeof read(`MSH|^~\\&|${text}`).ok === 'boolean',
      ),
    );
  });
});
