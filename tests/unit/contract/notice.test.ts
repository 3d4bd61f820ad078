import { describe, expect, it } from 'vitest';

import {
  noticeFor,
  refusalCodeOf,
  type NoticeCode,
  type SweepNoticeCode,
} from '../../../src/contract/notice.ts';
import { REFUSALS } from '../../../src/contract/refusals.ts';
import { STORAGE_TROUBLES } from '../../../src/contract/storageTroubles.ts';
import { TROUBLES } from '../../../src/contract/troubles.ts';

const SWEEP_CODES = [...Object.keys(REFUSALS), ...Object.keys(TROUBLES)] as SweepNoticeCode[];
const CODES = [...SWEEP_CODES, ...Object.keys(STORAGE_TROUBLES)] as NoticeCode[];

describe('noticeFor', () => {
  it('has for every code a cause, a remedy, and another remedy when that did not help', () => {
    for (const code of CODES) {
      const [first, again] = [noticeFor(code), noticeFor(code, {}, 1)];
      expect(first.message.length, code).toBeGreaterThan(10);
      expect(again.message, code).toBe(first.message);
      expect(again.remedy, code).not.toBe(first.remedy);
    }
  });

  it('speaks in whole sentences without blame or exclamation', () => {
    for (const code of CODES) {
      const { message, remedy } = noticeFor(code);
      for (const words of [message, remedy, noticeFor(code, {}, 1).remedy]) {
        expect(words, code).toMatch(/^[A-Z].*[.)]$/);
        expect(words, code).not.toMatch(/!|error|invalid|wrong/i);
      }
    }
  });

  it('says each thing under one name', () => {
    expect(new Set(CODES).size).toBe(CODES.length);
  });
});

describe('refusalCodeOf', () => {
  it('is a code that a reading may carry', () => {
    for (const code of SWEEP_CODES) {
      expect(Object.keys(REFUSALS)).toContain(refusalCodeOf(code));
    }
    expect(refusalCodeOf('film-cut-off')).toBe('file-unreadable');
    expect(refusalCodeOf('line-lost')).toBe('line-lost');
  });
});
