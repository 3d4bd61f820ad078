import { Link } from 'wouter';

import type { JobPath, JobStep, StepProgress } from '../../job/jobSteps.ts';
import { places } from '../shell/places.ts';
import { words } from '../words/words.ts';

export interface JobPathListProps {
  readonly wheelId: string;
  readonly path: JobPath;
}

/**
 * The steps along a plumb line: done, a full disc with a tick; now, a large ring with the bob in
 * it; later, a small ring; gone past with assumed values, a broken ring. The word says it too.
 */
export function JobPathList({ wheelId, path }: JobPathListProps) {
  return (
    <nav className="path" aria-label={words.job.pathTitle}>
      <ol>
        {path.steps.map((step) => (
          <li key={step.name} data-progress={step.progress}>
            <Step step={step} href={placeOf(wheelId, step)} path={path} />
          </li>
        ))}
      </ol>
    </nav>
  );
}

function Step(props: {
  readonly step: JobStep;
  readonly href: string | null;
  readonly path: JobPath;
}) {
  const { step, href, path } = props;
  const face = (
    <>
      <StepSign progress={step.progress} />
      <span className="path-words">
        <span className="path-name">
          {words.job.steps[step.name]}
          <span className="path-progress">{words.job.progress[step.progress]}</span>
        </span>
        <span className="path-help">
          {step.name === 'bench' && path.assumed.length > 0
            ? words.job.assumedCount(path.assumed.length)
            : words.job.stepHelp[step.name]}
        </span>
      </span>
    </>
  );
  if (href === null) return <span className="path-step">{face}</span>;
  return (
    <Link
      className="path-step"
      href={href}
      aria-current={step.progress === 'now' ? 'step' : undefined}
    >
      {face}
    </Link>
  );
}

/** Steps about a sweep can be opened once there is one; bench and sight at any time. */
function placeOf(wheelId: string, { name, entryId }: JobStep): string | null {
  switch (name) {
    case 'bench':
      return places.bench(wheelId);
    case 'sight':
      return places.sight(wheelId);
    case 'sweep':
      return null;
    case 'reading':
      return entryId === null ? null : places.reading(wheelId, entryId);
    case 'weights':
      return entryId === null ? null : places.weights(wheelId, entryId);
    case 'proof':
      return entryId === null ? null : places.proof(wheelId, entryId);
  }
}

function StepSign({ progress }: { readonly progress: StepProgress }) {
  return (
    <svg className="path-sign" viewBox="-20 -20 40 40" aria-hidden="true" focusable="false">
      {progress === 'done' && (
        <>
          <circle className="path-full" r={15} />
          <path className="path-tick" d="M-7 0 L-2 6 L8 -6" />
        </>
      )}
      {progress === 'now' && (
        <>
          <circle className="path-ring" r={17} />
          <path className="path-bob" d="M-6 -10 H6 L5 0 L0 11 L-5 0 Z" />
        </>
      )}
      {progress === 'later' && <circle className="path-ring" r={8} />}
      {progress === 'skipped' && <circle className="path-broken" r={14} />}
    </svg>
  );
}
