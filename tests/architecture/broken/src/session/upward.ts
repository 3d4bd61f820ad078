import { wrap } from 'comlink';

import { helped } from '../../tests/helper.ts';
import { worked } from '../../workers/upward.ts';
import { measured } from '../measure/upward.ts';

export const started = [new Worker('x.js'), wrap, worked, measured, helped];
