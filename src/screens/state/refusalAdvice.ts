import { noticeFor, type Notice, type NoticeCode } from '../../contract/notice.ts';

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

/** The advice changes when the first one did not help. */
export function remedyOf(notice: Notice, streak: NoticeStreak): string {
  const again = streak.code === notice.code && streak.times > 1;
  return again ? noticeFor(notice.code, undefined, 1).remedy : notice.remedy;
}
