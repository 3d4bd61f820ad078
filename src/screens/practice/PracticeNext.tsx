import { practiceRoom, type PracticeState } from '../../session/practice/practiceRoom.ts';
import { formatClockAndDeg, formatKnownMass, type Units } from '../words/numbers.ts';
import { words } from '../words/words.ts';
import type { PracticeStep } from './practiceStep.ts';

export interface PracticeNextProps {
  readonly state: PracticeState;
  readonly step: PracticeStep;
  readonly units: Units;
  /** Starts a sweep of the wheel as it is. */
  readonly onRead: () => void;
}

/** One line that says what to do next, and the button that does it. */
export function PracticeNext({ state, step, units, onRead }: PracticeNextProps) {
  const [role, word, act] = actionOf(step, state, onRead);
  return (
    <div className="practice-next" data-todo={step.todo}>
      <div role="status">
        {linesOf(step, units).map((line) => (
          <p className="instruction" key={line}>
            {line}
          </p>
        ))}
      </div>
      <button type="button" className="main" data-role={role} onClick={act}>
        {word}
      </button>
    </div>
  );
}

function linesOf(step: PracticeStep, units: Units): readonly string[] {
  switch (step.todo) {
    case 'stick':
      return step.weights.map(({ massG, angleDeg }) =>
        words.practice.stick(formatKnownMass(massG, units), formatClockAndDeg(angleDeg)),
      );
    default:
      return [words.practice.next[step.todo]];
  }
}

function actionOf(
  step: PracticeStep,
  { stand }: PracticeState,
  onRead: () => void,
): readonly [role: string, word: string, act: () => void] {
  const room = practiceRoom();
  switch (step.todo) {
    case 'guess':
    case 'read':
      return ['practice-read', words.practice.read, onRead];
    case 'again':
    case 'prove':
      return ['practice-read', words.practice.readAgain, onRead];
    case 'stick':
      return [
        'stick-on',
        step.weights.length === 1 ? words.practice.stickIt : words.practice.stickThem,
        () => room.stick(step.weights),
      ];
    case 'done':
      return ['show-truth', words.practice.showTruth, () => room.showTruth()];
    case 'leave': {
      const next = { seed: stand.seed + 1, difficulty: stand.difficulty };
      return ['another-wheel', words.practice.another, () => room.open(next)];
    }
  }
}
