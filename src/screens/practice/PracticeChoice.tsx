import { practiceRoom } from '../../session/practice/practiceRoom.ts';
import {
  DIFFICULTIES,
  type Difficulty,
  type PracticeStand,
} from '../../session/practice/practiceStand.ts';
import { ChoiceTiles } from '../parts/ChoiceTiles.tsx';
import { words } from '../words/words.ts';

export interface PracticeChoiceProps {
  readonly stand: PracticeStand;
  /** False where another wheel is what the screen's main button gives. */
  readonly isNextOffered: boolean;
}

/** Which wheel is practised on, and what is hard about it. */
export function PracticeChoice({ stand, isNextOffered }: PracticeChoiceProps) {
  const { seed, difficulty } = stand;
  const open = (choice: { readonly seed: number; readonly difficulty: Difficulty }) =>
    practiceRoom().open(choice);
  return (
    <section className="group" data-role="practice-choice" data-seed={seed}>
      <h2>{words.practice.seed(seed)}</h2>
      <ChoiceTiles
        label={words.practice.difficulty}
        tiles={DIFFICULTIES.map((value) => ({ value, word: words.practice.difficulties[value] }))}
        chosen={difficulty}
        onChoose={(value) => open({ seed, difficulty: value })}
      />
      {isNextOffered && (
        <button
          type="button"
          className="plain"
          data-role="another-wheel"
          onClick={() => open({ seed: seed + 1, difficulty })}
        >
          {words.practice.another}
        </button>
      )}
    </section>
  );
}
