import type { Page } from 'playwright-core';

/** Whoever writes the record of a decision: one question a page, answered in the order it is asked. */
export class Decider {
  constructor(readonly page: Page) {}

  press = (name: string | RegExp): Promise<void> =>
    this.page.getByRole('button', { name }).first().click();
  pick = (name: string | RegExp): Promise<void> => this.page.getByRole('radio', { name }).check();
  fill = (label: string, text: string): Promise<void> => this.page.getByLabel(label).fill(text);
  answer = async (label: string, text: string): Promise<void> => {
    await this.fill(label, text);
    await this.press('Go on');
  };
  choose = async (name: string | RegExp): Promise<void> => {
    await this.pick(name);
    await this.press('Go on');
  };

  /** What is to be decided, and that they were told all of it. */
  async told(): Promise<void> {
    await this.answer('What is to be decided?', 'A swab of the nose, to see if she is ill.');
    for (const box of await this.page.getByRole('checkbox').all()) await box.check();
    await this.answer('What were they told, and how?', 'With the pictures, twice.');
  }

  /** A doubt, and the four abilities, two of which are not there. */
  async doubted(): Promise<void> {
    await this.choose(/There is a reason to doubt it/);
    await this.answer('What was tried to help them decide?', 'Pictures, her sister, a quiet hour.');
    await this.answer('Why is there a doubt?', 'She asked who died when shown the swab.');
    for (const cannot of [true, false, true, false]) {
      await this.pick(cannot ? /^They cannot$/ : /^They can$/);
      await this.answer('In their words, or what they did', 'She said "kettle" and turned away.');
    }
  }

  /** That they cannot decide this, why, and on whose word it is. */
  async lacks(onWhoseWord: RegExp): Promise<void> {
    await this.choose(/They cannot make this decision now/);
    await this.answer('Why can they not do it?', 'Her dementia: she loses the thread at once.');
    await this.choose(onWhoseWord);
  }

  async interests(): Promise<void> {
    await this.answer('Could they decide later? Can it wait?', 'Not for this round.');
    await this.answer('What do they feel, wish and believe?', 'She wants to be well for her son.');
    await this.answer('Who was asked, and what did they say?', 'Her son and key worker: gently.');
  }

  async paper(seen: boolean): Promise<void> {
    await this.pick(seen ? 'I saw it' : 'I was only told of it');
    await this.answer('Which paper gives the right?', 'A lasting power of attorney, registered.');
  }

  async terms(): Promise<void> {
    await this.answer('Which ways were weighed up?', 'No test; nose only; both. Nose only.');
    await this.answer('On what terms?', 'With Pia, in her chair.');
    await this.stopRules();
  }

  stopRules = (): Promise<void> => this.answer('What ends it at once?', 'Pulls her sleeve up.');

  /** The days, the reading through, and keeping it. */
  async keep(review: string, until: string): Promise<void> {
    await this.fill('Look at it again by', review);
    await this.fill('Ends on', until);
    await this.press('Go on');
    await this.page.getByRole('heading', { name: 'Read it through' }).waitFor();
    await this.press('Keep the decision');
    await this.page.getByRole('region', { name: 'Decision' }).waitFor();
  }
}
