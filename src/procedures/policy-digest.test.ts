import { createHash } from 'node:crypto';
import canonicalize from 'canonicalize';
import { expect, it } from 'vitest';
import { demoPolicy } from '../../test/trial/home.ts';
import { pureHash } from '../ledger/hash.ts';
import { policyDigest } from './policy-digest.ts';

it('is the SHA-256 of the RFC 8785 text, as another program makes it', () => {
  const policy = demoPolicy();
  const text = canonicalize(policy) ?? '';
  expect(policyDigest(policy, pureHash)).toBe(
    createHash('sha256').update(text).digest('base64url'),
  );
});

it('tells a changed value from the one confirmed', () => {
  const changed = demoPolicy((policy) => {
    policy.due.repeatWithinDays.value += 1;
  });
  expect(policyDigest(changed, pureHash)).not.toBe(policyDigest(demoPolicy(), pureHash));
});

it('is not made of a file that has no canonical text', () => {
  const fraction = demoPolicy((policy) => {
    policy.handOver.distanceMetres.value = 1.5;
  });
  expect(() => policyDigest(fraction, pureHash)).toThrow(/bad-number/);
});
