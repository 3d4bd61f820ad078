import { describe, expect, it } from 'vitest';

import { de } from '../../../src/screens/words/de/index.ts';
import { en } from '../../../src/screens/words/en/index.ts';

/** Every sentence by its path; functions are called with stand-ins, to see their sentence. */
function sentencesOf(value: unknown, path = ''): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  const visit = (node: unknown, at: string): void => {
    if (typeof node === 'string') found.set(at, node);
    else if (typeof node === 'function') found.set(at, String(calledWithStandIns(node)));
    else if (typeof node === 'object' && node !== null) {
      for (const [key, child] of Object.entries(node)) {
        // A code of the contract's, not a sentence.
        if (key !== 'countsAs') visit(child, `${at}.${key}`);
      }
    }
  };
  visit(value, path);
  return found;
}

function calledWithStandIns(sentence: object): unknown {
  const standIns = Array.from({ length: (sentence as () => void).length }, (_, i) => 7301 + i);
  return (sentence as (...values: number[]) => unknown)(...standIns);
}

const english = sentencesOf(en);
const german = sentencesOf(de);

/**
 * Sentences that are rightly the same in both: names of the product and of languages, which stand
 * in their own, the signs of units, and words that both languages share ("Film").
 */
const RIGHTLY_THE_SAME =
  /^(Tiltsweep|English|Deutsch|Film, .*|minus .*|[^a-z]*(g|mm|oz|in)[^a-z]*(mm|in))$/i;
/** Shorter texts may well be the same word ("System"); longer ones were forgotten. */
const LONGEST_CHANCE_TWIN = 6;

describe('German', () => {
  it('has every sentence that English has, and no other', () => {
    expect([...german.keys()].toSorted()).toEqual([...english.keys()].toSorted());
  });

  it('leaves no sentence empty, and prints no stand-in for a missing value', () => {
    for (const [path, sentence] of [...english, ...german]) {
      expect(sentence.trim(), path).not.toBe('');
      expect(sentence, path).not.toMatch(/undefined|NaN|\[object/);
    }
  });

  it('has no sentence left in English', () => {
    const forgotten = [...german].filter(
      ([path, sentence]) =>
        sentence === english.get(path) &&
        sentence.length > LONGEST_CHANCE_TWIN &&
        /[a-z]{3}/i.test(sentence) &&
        !RIGHTLY_THE_SAME.test(sentence),
    );
    expect(forgotten).toEqual([]);
  });

  it('passes on every value that the English sentence has', () => {
    for (const [path, sentence] of english) {
      for (const value of sentence.match(/730\d/g) ?? []) {
        expect(german.get(path), path).toContain(value);
      }
    }
  });

  it('speaks to nobody as "du" or "Sie"', () => {
    for (const [path, sentence] of german) {
      expect(sentence, path).not.toMatch(/\b(du|dein|deine|dir|dich|Ihr|Ihre|Ihnen)\b/);
    }
  });
});
