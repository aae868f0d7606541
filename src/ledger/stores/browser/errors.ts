import { StorageError, type StorageReason } from '../../store.ts';

const reasons: Readonly<Record<string, StorageReason>> = {
  QuotaExceededError: 'full',
  InvalidStateError: 'closed',
  VersionError: 'newer',
  NotAllowedError: 'read-only',
  SecurityError: 'read-only',
  /** WebCrypto's word for bytes that do not fit the key. */
  OperationError: 'unreadable',
};

/** Runs storage work; what the browser throws comes out as a typed StorageError. */
export async function guarded<T>(what: string, work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    if (error instanceof StorageError || !(error instanceof Error)) throw error;
    const reason =
      reasons[error.name] ?? (error.name === 'UnknownError' ? 'unreadable' : undefined);
    if (reason === undefined) throw error;
    throw new StorageError(reason, `${what}: ${error.name}: ${error.message}`, { cause: error });
  }
}
