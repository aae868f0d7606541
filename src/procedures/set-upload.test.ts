import { describe, expect, it } from 'vitest';
import { asSenior, house, sendAll } from '../../test/trial/house.ts';
import { kitCode } from '../../test/trial/round.ts';
import type { StaffId } from '../care/ids.ts';
import { findings } from '../care/quality/findings.ts';
import { registerList } from '../care/results/registering.ts';
import { uploadFor, uploadRows } from '../care/results/upload.ts';
import { roundOf } from '../care/rounds/round.ts';
import { setUpload } from './set-upload.ts';

const setting = {
  test: 'respiratory',
  columns: [
    { holds: 'code', title: 'Barcode' },
    { holds: 'last-name', title: 'Surname' },
    { holds: 'first-names', title: 'Forenames' },
    { holds: 'born', title: 'DOB' },
    { holds: 'swab-day', title: 'Taken on' },
    { holds: 'swab-time', title: 'Taken at' },
    { holds: 'sites', title: 'Site' },
    { holds: 'fixed', title: 'Home', text: 'WH-12' },
  ],
  dates: 'dd/mm/yyyy',
  encoding: 'utf-8',
  separator: 'comma',
} as const;

const copy = () => ({ ...setting, columns: setting.columns.map((column) => ({ ...column })) });

describe('the upload file', () => {
  it('is set once by a senior; its lines follow the box, its days the form asked for', () => {
    const all = house();
    const { trial, round } = all;
    sendAll(all);
    expect(trial.refused(setUpload(trial.home, copy(), trial.doing)).reason).toBe('needs-senior');
    asSenior(trial);
    trial.must(setUpload(trial.home, copy(), trial.doing));
    const stands = uploadFor(trial.home, 'respiratory')!;
    const rows = uploadRows(
      trial.home,
      stands.data,
      registerList(trial.home, roundOf(trial.home, round)!),
    );
    expect(rows[0]).toEqual([
      ...[kitCode(1), 'Finch', 'Oriel', '02/06/1941', '03/03/2026'],
      ...[rows[0]![5], 'throat, nose', 'WH-12'],
    ]);
    expect(rows[0]![5]).toMatch(/^09:\d\d$/);
    expect(rows).toHaveLength(3);
  });

  it('has a title on every column and a column for the code, or nothing could be matched', () => {
    const { trial } = house();
    asSenior(trial);
    const without = { ...copy(), columns: copy().columns.slice(1) };
    expect(trial.refused(setUpload(trial.home, without, trial.doing)).reason).toBe(
      'no-code-column',
    );
    const bare = { ...copy(), columns: [{ holds: 'code' as const, title: ' ' }] };
    expect(trial.refused(setUpload(trial.home, bare, trial.doing)).reason).toBe('empty');
    const blank = {
      ...copy(),
      columns: [...copy().columns, { holds: 'fixed' as const, title: 'X' }],
    };
    expect(trial.refused(setUpload(trial.home, blank, trial.doing)).reason).toBe('empty');
  });

  it('set again it replaces what stood; set by a worker it waits for somebody who may', () => {
    const { trial } = house();
    asSenior(trial);
    trial.must(setUpload(trial.home, copy(), trial.doing));
    trial.must(setUpload(trial.home, { ...copy(), dates: 'yyyy-mm-dd' }, trial.doing));
    expect(uploadFor(trial.home, 'respiratory')?.data.dates).toBe('yyyy-mm-dd');
    expect(findings(trial.home)).toEqual([]);
    trial.by = 'pia' as StaffId;
    trial.add('upload.set', { ...copy(), test: 'other' });
    expect(findings(trial.home)).toMatchObject([{ kind: 'without-right' }]);
  });
});
