import { REFUSALS, type RefusalCode } from './refusals.ts';
import { STORAGE_TROUBLES, type StorageTroubleCode } from './storageTroubles.ts';
import { TROUBLES, type TroubleCode } from './troubles.ts';

/** What may stand where a reading was expected. */
export type SweepNoticeCode = RefusalCode | TroubleCode;
export type NoticeCode = SweepNoticeCode | StorageTroubleCode;

/** Anything that must be said to the person: a refusal, or trouble with a file, the camera, the worker or storage. */
export interface Notice<Code extends NoticeCode = NoticeCode> {
  readonly code: Code;
  readonly message: string;
  readonly remedy: string;
  readonly evidence?: Readonly<Record<string, number | string | boolean>>;
}

const WORDS = { ...REFUSALS, ...TROUBLES, ...STORAGE_TROUBLES };

/** The words for a code. `timesBefore` > 0 gives the advice for when the first one did not help. */
export function noticeFor<Code extends NoticeCode>(
  code: Code,
  evidence?: Notice['evidence'],
  timesBefore = 0,
): Notice<Code> {
  const words = WORDS[code];
  return {
    code,
    message: words.cause,
    remedy: timesBefore > 0 ? words.secondTime : words.remedy,
    ...(evidence && Object.keys(evidence).length > 0 ? { evidence } : {}),
  };
}

/** The refusal as which a notice is written into a reading. */
export function refusalCodeOf(code: SweepNoticeCode): RefusalCode {
  return code in TROUBLES ? TROUBLES[code as TroubleCode].countsAs : (code as RefusalCode);
}
