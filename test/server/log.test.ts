import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { StorageError } from '../../src/ledger/store.ts';
import { clear, type Home, MANAGER, pinOf, startHome } from './home.ts';

const lines: string[] = [];
let home: Home;
beforeEach(async () => {
  lines.length = 0;
  const target = { write: (line: string) => void lines.push(line) };
  home = await startHome({ log: { level: 'info', target } });
});
afterEach(async () => {
  await home.stop();
  clear(home);
});

describe('the log', () => {
  it('tells what was called, how it went and by which tablet, and nothing that anybody wrote', async () => {
    const caller = home.caller();
    await caller.signIn(MANAGER, '908070');
    await caller.call('POST', '/sign-in', {
      body: { who: { name: 'Ottoline Brack' }, pin: '908070' },
    });
    await caller.call('POST', '/sign-in', { body: '{"pin":"908070", "who' });
    await caller.signIn(MANAGER, pinOf(MANAGER));
    const enrolled = await caller.enrol('Rowan’s own tablet');
    await caller.call('POST', '/sync', { body: { device: enrolled.device, push: ['Ottoline'] } });
    await caller.call('GET', '/people/Ottoline?token=908070');
    const secrets = [
      ...caller.cookies.values(),
      caller.key ?? '',
      enrolled.syncKey,
      enrolled.tabletKey,
      ...['Ottoline', 'Brack', 'Rowan', '908070', pinOf(MANAGER), '127.0.0.1'],
    ];
    // The first line says where the server itself listens.
    const log = lines.slice(1).join('');
    for (const secret of secrets) expect([secret, log.includes(secret)]).toEqual([secret, false]);
    expect(log).toContain('"route":"/sync","status":400');
    expect(log).toContain(`"device":"${enrolled.device}"`);
    expect(log).toContain('"route":"/sign-in","status":401');
  });

  it('names the kind and place of a fault, not its words, and the caller hears less still', async () => {
    home.parts.rights.colleague = () =>
      Promise.reject(new StorageError('full', 'while Ottoline Brack was written'));
    const heard = await home
      .caller()
      .call('POST', '/sign-in', { body: { who: { staff: MANAGER }, pin: pinOf(MANAGER) } });
    expect([heard.status, heard.body]).toEqual([507, { reason: 'storage', what: 'full' }]);
    const fault = lines.find((line) => line.includes('StorageError')) ?? '';
    expect(fault).toContain('"reason":"full"');
    expect(fault).toContain('log.test.ts');
    expect(lines.join('')).not.toContain('Ottoline');
  });
});
