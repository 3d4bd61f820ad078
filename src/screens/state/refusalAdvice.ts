import type { Notice, NoticeCode } from '../../contract/notice.ts';
import { words } from '../words/words.ts';

/** How often in a row the same thing has gone wrong, without a good end in between. */
export interface NoticeStreak {
  readonly code: NoticeCode | null;
  readonly times: number;
}

export const NO_STREAK: NoticeStreak = { code: null, times: 0 };

/** `code` is what went wrong this time, null after a good reading. */
export function streakAfter(streak: NoticeStreak, code: NoticeCode | null): NoticeStreak {
  if (code === null) return NO_STREAK;
  return { code, times: streak.code === code ? streak.times + 1 : 1 };
}

/**
 * What was seen, in the language in use. The notice itself carries English, which is what a saved
 * reading says; a code that an older or newer program wrote is told as it stands there.
 */
export function causeOf(notice: Notice): string {
  return wordsFor(notice)?.cause ?? notice.message;
}

/** The advice changes when the first one did not help. */
export function remedyOf(notice: Notice, streak: NoticeStreak): string {
  const again = streak.code === notice.code && streak.times > 1;
  const found = wordsFor(notice);
  return (again ? found?.secondTime : found?.remedy) ?? notice.remedy;
}

function wordsFor({ code }: Notice) {
  return (words.notices as Partial<Record<string, (typeof words.notices)[NoticeCode]>>)[code];
}
