import { Transform } from 'node:stream';
import { ListProblem } from './list-problem.ts';

/** Lets sound UTF-8 through and stops at the first byte that is none, with its line. */
export function soundUtf8(fail: (error: ListProblem) => void): Transform {
  const decoder = new TextDecoder('utf-8', { fatal: true });
  let lines = 1;
  const check = (piece: Uint8Array, stream: boolean): boolean => {
    try {
      decoder.decode(piece, { stream });
      return true;
    } catch {
      fail(
        new ListProblem({
          problem: 'not-utf8',
          detail: 'The letters are not UTF-8. Save the list as CSV UTF-8.',
          place: { at: 'line', line: lines, column: 1 },
        }),
      );
      return false;
    }
  };
  return new Transform({
    transform(piece: Buffer, _encoding, done) {
      if (!check(piece, true)) return;
      if (piece.includes(0)) {
        fail(
          new ListProblem({
            problem: 'not-text',
            detail: 'The file is not text, or is in UTF-16.',
          }),
        );
        return;
      }
      for (let at = piece.indexOf(10); at >= 0; at = piece.indexOf(10, at + 1)) lines += 1;
      done(null, piece);
    },
    flush(done) {
      if (check(new Uint8Array(), false)) done();
    },
  });
}
