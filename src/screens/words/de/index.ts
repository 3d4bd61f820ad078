import type { Words } from '../en/index.ts';
import { bench } from './bench.ts';
import { byEye } from './byEye.ts';
import { common } from './common.ts';
import { directions } from './directions.ts';
import { evidence } from './evidence.ts';
import { help } from './help.ts';
import { job } from './job.ts';
import { licences } from './licences.ts';
import { logbook } from './logbook.ts';
import { notices } from './notices.ts';
import { proof } from './proof.ts';
import { reading, readingWarnings, warnings } from './reading.ts';
import { settings } from './settings.ts';
import { setup } from './setup.ts';
import { shed } from './shed.ts';
import { stand } from './stand.ts';
import { cautions, start } from './start.ts';
import { sweep, troubleNow } from './sweep.ts';
import { practice } from './practice.ts';
import { lead, sight } from './sight.ts';
import { update } from './update.ts';
import { weights } from './weights.ts';

/** German. A section that English has and this has not is an error of the types. */
export const de: Words = {
  sight,
  lead,
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
  troubleNow,
  reading,
  warnings,
  readingWarnings,
  directions,
  evidence,
  update,
  licences,
  logbook,
  notices,
  practice,
  weights,
  proof,
  byEye,
};
