import { hash, verify } from '@node-rs/argon2';

/** How dear one guess is. Memory in KiB. */
export interface PinCost {
  readonly memory: number;
  readonly time: number;
}

/**
 * RFC 9106 section 4, second recommended setting (64 MiB, three passes) in one lane instead of four;
 * 0.05 s on the machine built for.
 */
export const PIN_COST: PinCost = { memory: 64 * 1024, time: 3 };

/** Argon2id (the package's default kind) as a PHC string, with a fresh salt. */
export const hashPin = (pin: string, cost: PinCost): Promise<string> =>
  hash(pin, { memoryCost: cost.memory, timeCost: cost.time, parallelism: 1 });

export const verifyPin = (phc: string, pin: string): Promise<boolean> => verify(phc, pin);

/** Something to check a PIN against when there is nobody of that name, so that it takes as long. */
export class Nobody {
  private readonly phc: Promise<string>;
  constructor(cost: PinCost) {
    this.phc = hashPin('nobody has this PIN', cost);
  }
  async verify(pin: string): Promise<false> {
    await verifyPin(await this.phc, pin);
    return false;
  }
}
