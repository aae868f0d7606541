import { StorageError, type StorageReason } from '../../ledger/store.ts';

export type StartReason =
  | 'port-in-use'
  | 'port-not-allowed'
  | 'address-not-here'
  | 'folder-not-writable'
  | 'disk-full'
  | 'in-use'
  | 'newer'
  | 'unreadable'
  | 'other-service'
  | 'unknown-zone'
  | 'needs-manager'
  | 'no-service'
  | 'secret-open'
  | 'secret-unreadable'
  | 'secret-weak'
  | 'authority-unreadable';

/** Why the server cannot start. `detail`: the port, folder, address or holder it is about. */
export class StartFault extends Error {
  override readonly name = 'StartFault';
  constructor(
    readonly reason: StartReason,
    readonly detail: string,
    options?: { readonly cause?: unknown },
  ) {
    super(`${reason}: ${detail}`, options);
  }
}

const words: Readonly<Record<StartReason, (detail: string) => string>> = {
  'port-in-use': (at) =>
    `Something else already listens at ${at}. Stop it, or choose another port: npm start -- --port 8300`,
  'port-not-allowed': (at) =>
    `This user may not listen at ${at}. Choose a port above 1023: npm start -- --port 8240`,
  'address-not-here': (at) =>
    `This machine has no address ${at}. Leave --host out, or give one that it has.`,
  'folder-not-writable': (folder) =>
    `Nothing can be written to ${folder}. Give this user the right to, or choose another: npm start -- --data FOLDER`,
  'disk-full': (where) =>
    `The disk is full (${where}). Make room and start again. Nothing was lost or half-written.`,
  'in-use': (holder) =>
    `Another Tallyround server already uses this data folder (${holder}). Use that one, stop it, or choose another folder: npm start -- --data FOLDER`,
  newer: (what) =>
    `The data was written by a newer Tallyround (${what}). Update this one. Nothing was changed.`,
  unreadable: (what) =>
    `The data cannot be read (${what}). Do not start afresh on it. Restore the last backup into another folder.`,
  'other-service': (what) => `The files in the data folder do not belong together (${what}).`,
  'unknown-zone': (zone) => `There is no time zone ${zone}. Give one such as Europe/London.`,
  'no-service': (folder) => `There is no service in ${folder}. Say which folder with --data.`,
  'secret-open': (file) =>
    `Others on this machine can read the group's secret. Narrow it first: chmod 600 ${file}`,
  'secret-unreadable': (file) =>
    `The group's secret cannot be read (${file}). Check the path and who may read it.`,
  'secret-weak': (file) =>
    `${file} holds no secret of a group. Draw one: tallyround group-secret FILE`,
  'authority-unreadable': (file) => `The certificate of another home cannot be read (${file}).`,
  'needs-manager': () =>
    'A real service begins with its first manager: npm start -- --empty --manager "THEIR NAME"',
};

const stored: Readonly<Partial<Record<StorageReason, StartReason>>> = {
  full: 'disk-full',
  busy: 'in-use',
  'read-only': 'folder-not-writable',
  newer: 'newer',
  unreadable: 'unreadable',
  'other-service': 'other-service',
};

/** What to tell whoever started the server; undefined for a bug, which is thrown as it is. */
export function startWords(error: unknown): string | undefined {
  if (error instanceof StartFault) return words[error.reason](error.detail);
  if (error instanceof StorageError) {
    const reason = stored[error.reason];
    return reason && words[reason](error.detail);
  }
  return undefined;
}

const listening: Readonly<Record<string, StartReason>> = {
  EADDRINUSE: 'port-in-use',
  EACCES: 'port-not-allowed',
  EADDRNOTAVAIL: 'address-not-here',
  ENOTFOUND: 'address-not-here',
};

/** Names what kept a server from listening. */
export function listenFault(error: unknown, host: string, port: number): unknown {
  const { code } = error as NodeJS.ErrnoException;
  const reason = listening[code ?? ''];
  return reason
    ? new StartFault(reason, reason === 'address-not-here' ? host : `${host}:${port}`, {
        cause: error,
      })
    : error;
}
