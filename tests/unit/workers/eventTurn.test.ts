import { expect, it } from 'vitest';

import { createEventTurn } from '../../../workers/eventTurn.ts';

it('comes after every promise that is kept already', async () => {
  const turn = createEventTurn();
  let kept = 0;
  const chain = (async () => {
    for (let n = 0; n < 100; n++) {
      await Promise.resolve();
      kept += 1;
    }
  })();
  await turn.next();
  expect(kept).toBe(100);
  await chain;
  turn.close();
});

it('leaves nobody waiting when it is closed', async () => {
  const turn = createEventTurn();
  const waiting = turn.next();
  turn.close();
  await waiting;
});
