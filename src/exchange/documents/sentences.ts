/** Easy-read text stands one sentence a line. */
export const aLineEach = (text: string): string => text.replaceAll(/(?<=[.!?:])\s+/gu, '\n');
