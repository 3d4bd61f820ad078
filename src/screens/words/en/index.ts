import { REFUSALS, type RefusalWords } from '../../../contract/refusals.ts';
import { STORAGE_TROUBLES } from '../../../contract/storageTroubles.ts';
import { TROUBLES } from '../../../contract/troubles.ts';
import {
  READING_WARNINGS,
  type WarningCode,
  type WarningWords,
} from '../../../contract/warnings.ts';
import type { NoticeCode } from '../../../contract/notice.ts';
import { bench } from './bench.ts';
import { byEye } from './byEye.ts';
import { common } from './common.ts';
import { help } from './help.ts';
import { job } from './job.ts';
import { directions } from './directions.ts';
import { evidence } from './evidence.ts';
import { licences } from './licences.ts';
import { logbook } from './logbook.ts';
import { practice } from './practice.ts';
import { proof } from './proof.ts';
import { reading, warnings } from './reading.ts';
import { shed } from './shed.ts';
import { settings } from './settings.ts';
import { setup } from './setup.ts';
import { stand } from './stand.ts';
import { cautions, start } from './start.ts';
import { lead, sight } from './sight.ts';
import { sweep, troubleNow } from './sweep.ts';
import { update } from './update.ts';
import { weights } from './weights.ts';

/** English: the form that every language has to fill. */
export const en = {
  common,
  shed,
  job,
  bench,
  stand,
  settings,
  help,
  start,
  cautions,
  setup,
  sweep,
  sight,
  lead,
  troubleNow,
  reading,
  warnings,
  /** What a reading rests on though nobody confirmed it; in English the contract has the words. */
  readingWarnings: READING_WARNINGS as Readonly<Record<WarningCode, WarningWords>>,
  directions,
  evidence,
  update,
  licences,
  practice,
  logbook,
  weights,
  proof,
  byEye,
  /** Cause and remedy of everything that can go wrong; in English the contract has the words. */
  notices: { ...REFUSALS, ...TROUBLES, ...STORAGE_TROUBLES } as Readonly<
    Record<NoticeCode, RefusalWords>
  >,
};

/** What a language has to say. */
export type Words = typeof en;
