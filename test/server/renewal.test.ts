import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import type { Server } from 'node:https';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { connect } from 'node:tls';
import { expect, it } from 'vitest';
import { buildApp } from '../../src/server/app.ts';
import { openHomeNetwork } from '../../src/server/start/home-network.ts';
import { keepHouse } from '../../src/server/start/keep-house.ts';
import { clear, startHome } from './home.ts';
import { machineFor, optionsFor } from './machine.ts';

const DAY = 24 * 60 * 60 * 1000;

/** The serial number of the certificate that a server shows to somebody who trusts the home. */
const serialShown = (port: number, ca: Buffer) =>
  new Promise<string>((resolve, reject) => {
    const socket = connect({ host: '127.0.0.1', port, ca }, () => {
      resolve(socket.getPeerCertificate().serialNumber);
      socket.end();
    });
    socket.on('error', reject);
  });

it('a server that runs for months takes a new certificate before the old one ends, unasked', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'tallyround-renewal-'));
  const clock = { ms: Date.now() - 65 * DAY };
  const machine = machineFor([], { now: () => clock.ms });
  const options = optionsFor(folder, '--home-network', '--host', '127.0.0.1');
  const network = await openHomeNetwork(options, machine, 'Aldermere');
  const home = await startHome();
  const app = await buildApp(home.parts, { tls: network.tls });
  const { port } = new URL(await app.listen({ host: '127.0.0.1', port: 0 }));
  const secured = { network, server: app.server as unknown as Server };
  const ca = readFileSync(join(folder, 'tls', 'authority.pem'));
  const first = await serialShown(Number(port), ca);
  await keepHouse(home.parts, secured);
  expect(await serialShown(Number(port), ca)).toBe(first);
  clock.ms += 65 * DAY;
  await keepHouse(home.parts, secured);
  expect(await serialShown(Number(port), ca)).not.toBe(first);
  await app.close();
  await home.stop();
  clear(home);
  rmSync(folder, { recursive: true });
});
