/** A text field as it stood before a scan's first character fell into it. */
export interface KeptField {
  readonly field: HTMLInputElement | HTMLTextAreaElement;
  readonly value: string;
}

export function keepField(target: EventTarget | null): KeptField | undefined {
  return target instanceof HTMLInputElement || target instanceof HTMLTextAreaElement
    ? { field: target, value: target.value }
    : undefined;
}

/** Takes the scan's first character out again and tells whoever listens to the field. */
export function restoreField(kept: KeptField | undefined): void {
  if (kept === undefined || kept.field.value === kept.value) return;
  kept.field.value = kept.value;
  kept.field.dispatchEvent(new Event('input', { bubbles: true }));
}
