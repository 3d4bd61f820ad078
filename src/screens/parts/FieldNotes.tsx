export interface FieldNotesProps {
  /** Of the field that they are about. */
  readonly id: string;
  readonly problem: string | null;
  readonly help: string | undefined;
}

/** Under a field: what is wrong with what was typed, and what the value is. */
export function FieldNotes({ id, problem, help }: FieldNotesProps) {
  return (
    <>
      {problem !== null && (
        <p id={`${id}-problem`} className="stepper-problem" role="status">
          {problem}
        </p>
      )}
      {help !== undefined && (
        <p id={`${id}-help`} className="stepper-help">
          {help}
        </p>
      )}
    </>
  );
}

/** By which notes a field is described, for its `aria-describedby`. */
export function describedBy({ id, problem, help }: FieldNotesProps): string | undefined {
  const ids = [help && `${id}-help`, problem && `${id}-problem`].filter(Boolean);
  return ids.length === 0 ? undefined : ids.join(' ');
}
