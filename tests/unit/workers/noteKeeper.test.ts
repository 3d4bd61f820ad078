import { expect, it } from 'vitest';

import { createNoteKeeper } from '../../../workers/noteKeeper.ts';

/** A reader that always has something new, and a taker whose storing ends when the test says so. */
function keeperWithLog() {
  let taken = 0;
  const storing: ((isStored: boolean) => void)[] = [];
  const reader = {
    takeNotes: () => ({ bytes: new Uint8Array([(taken += 1)]), coveredDeg: taken }),
  };
  const keeper = createNoteKeeper(reader, {
    note: () => new Promise((resolve) => storing.push(resolve)),
  });
  const answer = async (isStored: boolean) => {
    storing.at(-1)!(isStored);
    await new Promise((resolve) => setTimeout(resolve));
  };
  return { keeper, storing, answer };
}

it('passes notes on once a second of the sweep, not with each picture', async () => {
  const { keeper, storing, answer } = keeperWithLog();
  for (let picture = 0; picture < 90; picture++) {
    keeper.afterPicture(picture / 30);
    if (picture % 30 === 0) await answer(true);
  }
  expect(storing).toHaveLength(3);
});

it('waits with the next piece until the last one is stored', async () => {
  const { keeper, storing, answer } = keeperWithLog();
  for (const timeS of [0, 1, 2, 3]) keeper.afterPicture(timeS);
  expect(storing).toHaveLength(1);
  await answer(true);
  keeper.afterPicture(3.1);
  expect(storing).toHaveLength(2);
});

it('ends when storage takes no more, and asks the reader for nothing then', async () => {
  const { keeper, storing, answer } = keeperWithLog();
  keeper.afterPicture(0);
  await answer(false);
  keeper.afterPicture(5);
  keeper.end();
  expect(storing).toHaveLength(1);
});

it('passes on the rest at the end of the sweep, also while a piece is being stored', () => {
  const { keeper, storing } = keeperWithLog();
  keeper.afterPicture(0);
  keeper.end();
  keeper.end();
  keeper.afterPicture(9);
  expect(storing).toHaveLength(2);
});
