import { useSyncExternalStore } from 'react';

import { practiceRoom, type PracticeState } from '../../session/practice/practiceRoom.ts';

export function usePracticeRoom(): PracticeState {
  const room = practiceRoom();
  return useSyncExternalStore(room.subscribe, room.getState);
}
