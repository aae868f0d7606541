import type { Random } from '../accounts/secrets.ts';
import { SECRET_BYTES } from '../group/secret.ts';

/** A secret for a group of homes, as its file holds it. */
export const drawGroupSecret = (random: Random): string =>
  Buffer.from(random(SECRET_BYTES)).toString('base64url');
