import { sha256 } from '@noble/hashes/sha2.js';
import { utf8ToBytes } from '@noble/hashes/utils.js';
import windlestrawHouse from '../../policies/windlestraw-house-1.json' with { type: 'json' };
import type { DataOf, Fact, Kind, NewFact } from '../../src/care/catalogue.ts';
import { timesOf } from '../../src/care/custody/paper.ts';
import type { Home } from '../../src/care/home.ts';
import { emptyHome, file } from '../../src/care/home.ts';
import type { FactId, PersonId, StaffId } from '../../src/care/ids.ts';
import type { Policy } from '../../src/care/policy/policy.ts';
import { readPolicy } from '../../src/care/policy/policy.ts';
import type { Refusal } from '../../src/care/refusal.ts';
import type { Day, Instant } from '../../src/care/time.ts';
import { after, momentOf } from '../../src/care/time.ts';
import type { Doing, Outcome } from '../../src/procedures/doing.ts';

/** The demo policy, with what a test needs changed. */
export function demoPolicy(change: (policy: Policy) => void = () => undefined): Policy {
  const read = readPolicy(structuredClone(windlestrawHouse));
  if (!read.ok) throw new Error(`${read.where}: ${read.what}`);
  change(read.policy);
  return read.policy;
}

const asIs = demoPolicy();

const id = (text: string) => Buffer.from(sha256(utf8ToBytes(text))).toString('base64url') as FactId;

/**
 * A home for tests: the real core on facts whose envelope is made up here. Times are wall times in
 * the service's zone; a device counts its own facts, as tablets do.
 */
export class Trial {
  readonly home: Home;
  readonly facts: Fact[] = [];
  now: Instant;
  by = 'jonah' as StaffId;
  device = 'T0000001';
  #seq = new Map<string, number>();
  #drawn = 0;

  constructor({ on = '2026-03-03', at = '09:00', zone = 'Europe/London', policy = asIs } = {}) {
    this.home = emptyHome({ zone, policies: [policy] });
    this.now = momentOf(on as Day, at, zone);
  }

  /** Sets the clock to a wall time today, or on a day. */
  at(time: string, on?: string): this {
    const day = on ?? this.now.slice(0, 10);
    this.now = momentOf(day as Day, time, this.home.service.zone);
    return this;
  }

  wait(minutes: number): this {
    this.now = after(this.now, minutes * 60_000);
    return this;
  }

  get doing(): Doing {
    return {
      now: this.now,
      by: this.by,
      device: this.device,
      draw: () => `${this.device.toLowerCase()}x${String(++this.#drawn).padStart(4, '0')}`,
    };
  }

  /** Files a new fact as this device would append it. */
  add<K extends Kind>(kind: K, data: DataOf<K>, hidden?: unknown): Fact {
    return this.#append({
      kind,
      data,
      ...(hidden !== undefined && { private: hidden }),
    } as NewFact);
  }

  #append(fresh: NewFact): Fact {
    const seq = (this.#seq.get(this.device) ?? 0) + 1;
    this.#seq.set(this.device, seq);
    this.now = after(this.now, 1000);
    const fact = {
      ...fresh,
      id: id(JSON.stringify([this.device, seq, this.now, fresh.kind, fresh.data])),
      ...timesOf(this.now, fresh.data),
      by: this.by,
      device: this.device,
      seq,
    } as Fact;
    file(this.home, fact);
    this.facts.push(fact);
    return fact;
  }

  /** Takes in a fact that another device has written. */
  take(fact: Fact): void {
    file(this.home, fact);
    this.facts.push(fact);
  }

  /** Does what a procedure allowed; a refusal fails the test with its reason. */
  must(outcome: Outcome): Fact[] {
    if (!outcome.ok) throw new Error(`refused: ${JSON.stringify(outcome)}`);
    return outcome.value.map((fresh) => this.#append(fresh));
  }

  /** The refusal of a procedure that must not go ahead. */
  refused(outcome: Outcome): Refusal {
    if (outcome.ok) throw new Error(`allowed: ${JSON.stringify(outcome.value)}`);
    return outcome;
  }

  person(name: string, born: string, more: { room?: string; photo?: string } = {}): PersonId {
    const person = name.toLowerCase().replaceAll(/[^a-z]/g, '') as PersonId;
    const fields = { name, called: name.split(' ')[0], born, ...more };
    for (const [about, value] of Object.entries(fields)) {
      this.add('person.described', { person, about: about as 'name' }, { value });
    }
    const device = this.device;
    this.device = 'S0000001';
    this.add(
      'consent.decided',
      {
        ...{ person, test: 'respiratory', authority: 'asks-each-time' },
        ...{ from: '2026-01-01' as Day, until: '2026-12-31' as Day },
      },
      { reason: 'Understands and decides.' },
    );
    this.device = device;
    return person;
  }

  /** A colleague trained for both, written down by the service itself. */
  staff(
    name: string,
    role: 'worker' | 'senior' | 'manager' = 'worker',
    until = '2027-01-01',
  ): StaffId {
    const staff = name.toLowerCase() as StaffId;
    const device = this.device;
    this.device = 'S0000001';
    this.add('staff.described', { staff, about: 'name' }, { value: name });
    this.add('staff.role', { staff, role });
    for (const skill of ['swab', 'record'] as const) {
      this.add('staff.competence', { staff, skill, until: until as Day });
    }
    this.device = device;
    return staff;
  }
}
