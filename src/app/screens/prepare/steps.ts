/** The steps of preparing a round, in order. */
export const prepareSteps = ['when', 'who', 'order', 'check'] as const;
export type PrepareStep = (typeof prepareSteps)[number];
