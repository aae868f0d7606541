import { type Body, type Confirmed, factOf, type LedgerFact } from '../../fact.ts';
import type { ChainValue, DeviceId, FactId, Instant } from '../../ids.ts';
import { type Only, passes } from '../../store.ts';

/**
 * A block's plain text is three lines: the receipts in columns, the bodies as one JSON array of
 * their canonical texts, and the private records. A fold parses the second line in one go; a body's
 * exact text is cut out of it by its length. No canonical text has a line break in it.
 */
interface Columns {
  /** Position of the first fact. */
  readonly first: number;
  /** 43 characters each, joined. */
  readonly ids: string;
  readonly chains: string;
  /** 24 characters each, joined; a list in blocks of older programs. So is `via`. */
  readonly arrived: string | readonly Instant[];
  readonly via: Words | readonly DeviceId[];
  readonly skew: readonly number[];
  /** Length of each body. */
  readonly sizes: readonly number[];
  /** What a first look chooses by, without opening a body. Absent in blocks of older programs. */
  readonly choice?: Choice;
}

interface Choice {
  /** `at` of each body, 24 characters, joined. */
  readonly ats: string;
  readonly kinds: Words;
}

/** A column of few different words. */
interface Words {
  readonly words: readonly string[];
  /** For each fact, which of them. */
  readonly which: readonly number[];
}

/** Facts of a block by their places, 0 the first: from `from` to before `to`, and those that pass. */
export interface Which {
  readonly from: number;
  readonly to: number;
  readonly only?: Only;
}

const [HASH, INSTANT] = [43, 24];
const NEW_LINE = 10;
const encoder = new TextEncoder();
const decoder = new TextDecoder();

export function encodeBlock(entries: readonly Confirmed[]): Uint8Array<ArrayBuffer> {
  const columns: Columns = {
    first: entries[0]?.position ?? 0,
    ids: entries.map(({ id }) => id).join(''),
    chains: entries.map(({ chain }) => chain).join(''),
    arrived: entries.map(({ arrived }) => arrived).join(''),
    via: wordsOf(entries.map(({ via }) => via)),
    skew: entries.map(({ skew }) => skew),
    sizes: entries.map(({ body }) => body.length),
    choice: choiceOf(entries),
  };
  const bodies = `[${entries.map(({ body }) => body).join(',')}]`;
  const records = JSON.stringify(entries.map((entry) => entry.private ?? 0));
  return encoder.encode(`${JSON.stringify(columns)}\n${bodies}\n${records}`);
}

function choiceOf(entries: readonly Confirmed[]): Choice {
  const bodies = entries.map(({ body }) => JSON.parse(body) as Body);
  return {
    ats: bodies.map(({ at }) => at).join(''),
    kinds: wordsOf(bodies.map(({ kind }) => kind)),
  };
}

function wordsOf(column: readonly string[]): Words {
  const words = [...new Set(column)];
  const places = new Map(words.map((word, place) => [word, place]));
  return { words, which: column.map((word) => places.get(word) ?? 0) };
}

const wordAt = ({ words, which }: Words, i: number): string => words[which[i] ?? -1] ?? '';

/**
 * The three lines, each decoded when it is asked for. Apart, because one name with a letter beyond
 * Latin-1 in the third would otherwise double the memory of everything.
 */
class Lines {
  readonly columns: Columns;
  private readonly one: number;
  private readonly two: number;

  constructor(private readonly plain: Uint8Array) {
    this.one = plain.indexOf(NEW_LINE);
    this.two = plain.indexOf(NEW_LINE, this.one + 1);
    this.columns = JSON.parse(this.text(0, this.one)) as Columns;
  }

  get bodies(): string {
    return this.text(this.one + 1, this.two);
  }

  get records(): readonly (string | 0)[] {
    return JSON.parse(this.text(this.two + 1)) as (string | 0)[];
  }

  private text(from: number, to?: number): string {
    return decoder.decode(this.plain.subarray(from, to));
  }
}

/** The facts of a block as they were taken in. */
export function entriesOf(plain: Uint8Array): readonly Confirmed[] {
  const { columns, bodies, records } = new Lines(plain);
  const texts = cut(bodies, columns.sizes);
  return texts.map((body, i) => {
    const record = records[i];
    const entry = { id: pieceOf(columns.ids, i, HASH) as FactId, body, ...receiptOf(columns, i) };
    return typeof record === 'string' ? { ...entry, private: record } : entry;
  });
}

/** The facts of a block opened for a fold. */
export function factsOf(plain: Uint8Array, which: Which): readonly LedgerFact[] {
  const lines = new Lines(plain);
  const { columns } = lines;
  const places = placesOf(columns, which);
  if (places.length === 0) return [];
  const bodies = bodiesAt(lines, places);
  const { records } = lines;
  const facts = places.map((place, i) => {
    const id = pieceOf(columns.ids, place, HASH) as FactId;
    const record = records[place];
    const written = typeof record === 'string' ? { id, private: record } : { id };
    const [size, receipt] = [columns.sizes[place] ?? 0, receiptOf(columns, place)];
    return factOf(bodies[i] as Body, { written, size, receipt });
  });
  // A block of an older program could not choose beforehand.
  return columns.choice ? facts : facts.filter(({ kind, at }) => passes(which.only, kind, at));
}

function placesOf({ sizes, choice }: Columns, { from, to, only }: Which): readonly number[] {
  const places: number[] = [];
  for (let i = Math.max(0, from); i < Math.min(to, sizes.length); i++)
    if (!only || !choice || chosen(choice, i, only)) places.push(i);
  return places;
}

const chosen = ({ ats, kinds }: Choice, i: number, only: Only): boolean =>
  passes(only, wordAt(kinds, i), pieceOf(ats, i, INSTANT));

/** Many are parsed in one go, a few by themselves. */
function bodiesAt({ bodies, columns }: Lines, places: readonly number[]): readonly Body[] {
  if (places.length === columns.sizes.length) return JSON.parse(bodies) as Body[];
  const texts = cut(bodies, columns.sizes);
  return places.map((place) => JSON.parse(texts[place] ?? '') as Body);
}

function cut(bodies: string, sizes: readonly number[]): readonly string[] {
  let from = 1;
  return sizes.map((size) => {
    const body = bodies.slice(from, from + size);
    from += size + 1;
    return body;
  });
}

function receiptOf({ first, chains, arrived, via, skew }: Columns, i: number) {
  return {
    position: first + i,
    arrived: (typeof arrived === 'string' ? pieceOf(arrived, i, INSTANT) : arrived[i]) as Instant,
    via: ('words' in via ? wordAt(via, i) : via[i]) as DeviceId,
    skew: skew[i] ?? 0,
    chain: pieceOf(chains, i, HASH) as ChainValue,
  };
}

const pieceOf = (joined: string, i: number, length: number): string =>
  joined.slice(i * length, i * length + length);
