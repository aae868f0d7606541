import type { How } from '../../care/kind.ts';
import type { ScanWay } from '../pieces/scan/scan-field.tsx';

/** How a code came in, as the record has it. */
export const howOf = (way: ScanWay): How => (way === 'scanned' ? 'scanned' : 'typed-twice');
