import type { ChangeEvent, ReactNode } from 'react';

export interface SweepFilesInputProps {
  readonly className: string;
  /** What tests find it by. */
  readonly role: 'sweep-files' | 'wheel-film' | 'earlier-reading';
  readonly accept?: string;
  /** For those who hear the screen; what is seen are the children. */
  readonly label: string;
  readonly onFiles: (files: readonly File[]) => void;
  readonly children: ReactNode;
}

/** Takes film and setup file of a recorded sweep. */
export function SweepFilesInput(props: SweepFilesInputProps) {
  const { className, role, label, onFiles, children } = props;
  const { accept = 'video/*,.json,application/json' } = props;
  const choose = (event: ChangeEvent<HTMLInputElement>) => {
    const input = event.currentTarget;
    const files = [...(input.files ?? [])];
    // Emptied, so that choosing the same files again is a change again.
    input.value = '';
    if (files.length > 0) onFiles(files);
  };
  return (
    <label className={className}>
      <input
        type="file"
        multiple
        accept={accept}
        data-role={role}
        className="unseen"
        aria-label={label}
        onChange={choose}
      />
      {children}
    </label>
  );
}
