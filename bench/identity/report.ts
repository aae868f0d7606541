import { wilson } from '../../src/statistics/proportions/wilson.ts';
import type { Assumption } from './assumptions.ts';
import { assumptions, rates, slipKinds } from './assumptions.ts';
import type { Tally } from './simulate.ts';
import { simulate } from './simulate.ts';

const perMillion = (events: number, trials: number): string =>
  ((1e6 * events) / trials).toFixed(events * 20 < trials / 1000 ? 1 : 0);

/** A share in a million with its 95 % interval. */
function share(events: number, trials: number): string {
  const interval = wilson({ events, trials });
  if (!interval.ok) throw new Error(interval.detail);
  const { lower, upper } = interval.value;
  const at = (value: number) => (1e6 * value).toFixed(0);
  return `${perMillion(events, trials)} (${at(lower)} to ${at(upper)})`;
}

const sum = (values: Iterable<number>): number => [...values].reduce((all, each) => all + each, 0);

export function table(tallies: readonly Tally[]): string {
  const rows = tallies.map(({ way, tests, undetected, caught, falseAlarms, played }) => [
    way,
    share(undetected, tests),
    share(sum(caught.values()), tests),
    ((1000 * falseAlarms) / tests).toFixed(2),
    played.toLocaleString('en-GB'),
  ]);
  return [
    '| way of working | wrong person, undetected, per million (95 %) | slips caught, per million (95 %) | false alarms per 1,000 | tests played in full |',
    '| --- | --- | --- | --- | --- |',
    ...rows.map((cells) => `| ${cells.join(' | ')} |`),
    '',
    ratio(tallies),
  ].join('\n');
}

export function ratioOf(tallies: readonly Tally[]): number {
  const [paper] = tallies;
  const flow = tallies.at(-1);
  return paper === undefined || flow === undefined ? NaN : paper.undetected / flow.undetected;
}

const ratio = (tallies: readonly Tally[]): string => {
  const times = ratioOf(tallies);
  return Number.isFinite(times)
    ? `Undetected wrong persons: ${times.toFixed(0)} times fewer than with paper.`
    : 'Undetected wrong persons: none seen with Tallyround.';
};

const where = ({ way, tests, caught }: Tally): string =>
  [
    `### ${way}`,
    '',
    '| caught at | per million |',
    '| --- | --- |',
    ...[...caught]
      .sort((a, b) => b[1] - a[1])
      .map(([place, count]) => `| ${place} | ${perMillion(count, tests)} |`),
  ].join('\n');

const VARIED = {
  'as assumed': {},
  'birthday picked from memory in 1 turn of 5': { fromMemory: 0.2 },
  'birthday picked from memory in 1 turn of 100': { fromMemory: 0.01 },
  'sheet scanned instead of the tube in 1 of 10': { proxyScan: 0.1 },
  'sheet always scanned instead of the tube and bag': { proxyScan: 1, proxyAgain: 1 },
  'stickers go wrong 1 time in 1,000 (lower quartile)': { mislabelled: 1 / 1000 },
  'stickers never go wrong': { mislabelled: 0 },
  'typing goes wrong 4 times in 100': { typingSlip: 0.04 },
} as const;

function sensitivity({ tests, seed }: { tests: number; seed: number }): string {
  const rows = Object.entries(VARIED).map(([name, change]) => {
    const tallies = simulate({ ...rates, ...change }, { tests, seed });
    const [paper, , flow] = tallies;
    return `| ${name} | ${perMillion(paper?.undetected ?? 0, tests)} | ${perMillion(flow?.undetected ?? 0, tests)} | ${ratioOf(tallies).toFixed(0)} |`;
  });
  return [
    '| what differs | paper, per million | Tallyround, per million | times fewer |',
    '| --- | --- | --- | --- |',
    ...rows,
  ].join('\n');
}

const assumed = (): string =>
  [
    '| what | value | source |',
    '| --- | --- | --- |',
    ...Object.values(assumptions as Record<string, Assumption>).map(
      ({ what, value, source }) =>
        `| ${what} | ${String(Number(value.toPrecision(3)))} | ${source} |`,
    ),
  ].join('\n');

/** The whole page. It is made by the script alone, so that nobody edits a number by hand. */
export function page(tallies: readonly Tally[], run: { tests: number; seed: number }): string {
  return `# Experiment: how often does a result end on the wrong person?

Made by \`npx tsx bench/identity/run.ts --write\`, ${run.tests.toLocaleString('en-GB')} tests in each way of working, seed ${String(run.seed)}.
Intervals are Wilson's, 95 %. They cover chance in the simulation, not doubt about the assumptions: those are
below, and so is what happens when they are wrong.

${table(tallies)}

What was simulated: two people of a home are swabbed one after the other. Slips of hand and eye are drawn at the
rates below. On paper and with a check character, codes are written beside names and typed later. In Tallyround's
flow each test with a slip goes touch by touch through the program's own procedures (start, blind choice, willingness,
kit, labels, swab, packing, result), unless typing twice has caught it already, and so does one in a thousand of the
others: where no slip is drawn nothing is left to chance.

## Where slips were caught

${tallies.map(where).join('\n\n')}

## Assumptions

${assumed()}

Typing slips are of these kinds, in per cent: substitution ${String(slipKinds.substitution)}, neighbours swapped ${String(slipKinds.adjacent)}, swapped over one sign
${String(slipKinds.jump)}, twins ${String(slipKinds.twin)} (Verhoeff 1969, as widely quoted, from memory). Paper: serial numbers in a row without a check
character, a hundred to a box; a slip that lands on another kit of the box is a wrong person. All slips are
independent, at most one of each kind in a test. Hospital figures stand in for care homes, which have published none.

## If the assumptions are wrong

${sensitivity({ tests: run.tests / 5, seed: run.seed })}

The aim is 50 times fewer than with paper. It holds or fails with what people do, not with the arithmetic: a sheet of
stickers that is scanned instead of the tube, and a birthday that is picked without asking, undo most of it.

## What the tool cannot catch

- Two people who swap before they are identified and answer to each other's name and birthday.
- A birthday picked from memory, unasked, while somebody else sits there.
- A face named wrongly by everybody who says they know it.
- Stickers of two open kits crossed on tubes while the sheets, not the tubes, are scanned both times.
- A mix-up inside the laboratory. A result that does not fit the history is challenged, and most such results fit.
- Anything that staff write down that did not happen.
`;
}
