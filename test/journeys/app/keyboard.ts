import type { Locator, Page } from 'playwright-core';

/** A little longer than the app takes for a scanner's. */
const machineGapMs = 130;

/** What is to be said of the element that has the focus, and of how it stands to where one wants to go. */
interface Stand {
  readonly at: 'here' | 'beside' | 'elsewhere';
  /** Nothing has the focus: whoever works without a pointer no longer knows where they are. */
  readonly lost: boolean;
  /** What is wrong with the way the focused control is shown; empty where nothing is. */
  readonly unseen: string;
}

/** A hand without a pointer: Tab, the arrows, digits, Enter and Space, and typing. */
export class Keyboard {
  readonly #page: () => Page;
  /** What made the way by keyboard hard: a focus that was lost, not shown, or covered. */
  readonly trouble: string[] = [];

  #began = false;

  constructor(page: () => Page) {
    this.#page = page;
  }

  /** Goes to a thing by Tab alone and presses a key on it. */
  async press(target: Locator, key: 'Enter' | 'Space'): Promise<void> {
    await this.tabTo(target);
    // Keys that follow one another faster than a hand can press are a scanner's.
    await this.#page().waitForTimeout(machineGapMs);
    await this.#page().keyboard.press(key);
  }

  /**
   * Tab until it is reached; within a group of radio buttons, which is one stop, the arrows. Returns how
   * many keys that took.
   */
  async tabTo(target: Locator): Promise<number> {
    for (let step = 0; step < 250; step += 1) {
      const { at, lost, unseen } = await target.evaluate(standOf);
      // A page that was just opened has given the focus to nothing yet.
      if (step === 0 && lost && this.#began)
        this.trouble.push(`the focus was lost before ${String(target)}`);
      this.#began = true;
      if (step > 0 && unseen !== '') this.trouble.push(unseen);
      if (at === 'here') return step;
      await this.#page().keyboard.press(at === 'beside' ? 'ArrowDown' : 'Tab');
    }
    throw new Error(`Tab never reached ${String(target)}`);
  }

  /** One of the choices at the bedside: by its digit, wherever the focus is; picked by Enter. */
  async choose(target: Locator): Promise<void> {
    const place = await target.evaluate((element) =>
      [...(element.closest('ol')?.querySelectorAll('button') ?? [])].indexOf(
        element as HTMLButtonElement,
      ),
    );
    await this.#page().waitForTimeout(machineGapMs);
    await this.#page().keyboard.press(String(place + 1));
    await this.#page().waitForTimeout(machineGapMs);
    const { at, unseen } = await target.evaluate(standOf);
    if (at !== 'here') throw new Error(`the digit ${place + 1} did not lead to ${String(target)}`);
    if (unseen !== '') this.trouble.push(unseen);
    await this.#page().keyboard.press('Enter');
  }

  /** Types into a field that Tab has reached, over what stands there. */
  async type(field: Locator, text: string): Promise<void> {
    await this.tabTo(field);
    await this.#page().keyboard.press('Control+A');
    await this.#page().keyboard.type(text, { delay: 90 });
  }

  /** A day into the browser's own date field, part by part as the page's language orders them. */
  async typeDay(field: Locator, day: string): Promise<void> {
    await this.tabTo(field);
    const [year, month, date] = day.split('-');
    const language = await this.#page().evaluate(() => navigator.language);
    const parts = language === 'en-US' ? [month, date, year] : [date, month, year];
    await this.#page().keyboard.type(parts.join(''), { delay: 90 });
    const got = await field.inputValue();
    if (got !== day) throw new Error(`${day} was typed and ${got} came out`);
  }

  /** The option of a select that Tab has reached, by the arrow keys. */
  async pick(select: Locator, option: string): Promise<void> {
    await this.tabTo(select);
    for (let step = 0; step < 60; step += 1) {
      const chosen = await select.evaluate(
        (element) => (element as HTMLSelectElement).selectedOptions[0]?.label,
      );
      if (chosen === option) return;
      await this.#page().keyboard.press('ArrowDown');
    }
    throw new Error(`the arrows never came to ${option}`);
  }
}

/** In the page: where the focus is, seen from an element. */
function standOf(element: Element): Stand {
  const active = document.activeElement;
  const lost = active === null || active === document.body;
  if (lost) return { at: 'elsewhere', lost, unseen: '' };
  const unseen = howUnseen(active);
  if (element === active) return { at: 'here', lost, unseen };
  const radio = element as HTMLInputElement;
  const together =
    radio.type === 'radio' &&
    (active as HTMLInputElement).type === 'radio' &&
    (active as HTMLInputElement).name === radio.name;
  return { at: together ? 'beside' : 'elsewhere', lost, unseen };

  /** A control that takes the focus has a ring, or what it stands in has, and is not covered. */
  function howUnseen(focused: Element): string {
    if ((focused as HTMLElement).tabIndex < 0) return '';
    const what = focused.outerHTML.slice(0, 160);
    let ringed: Element | null = focused;
    for (let up = 0; up < 4 && ringed !== null; up += 1) {
      const style = getComputedStyle(ringed);
      if (style.outlineStyle !== 'none' && Number.parseFloat(style.outlineWidth) >= 2) break;
      ringed = up === 3 ? null : ringed.parentElement;
    }
    if (ringed === null) return `no ring is drawn on ${what}`;
    const box = ringed.getBoundingClientRect();
    const points = [0.5, 0.1, 0.9].map((part) => [
      box.left + box.width / 2,
      box.top + box.height * part,
    ]);
    const seen = points.some(([x = 0, y = 0]) => {
      const top = document.elementFromPoint(x, y);
      return top !== null && (ringed.contains(top) || top.contains(ringed));
    });
    return seen ? '' : `something covers ${what}`;
  }
}
