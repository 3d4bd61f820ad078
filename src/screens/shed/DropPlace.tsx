import { useState, type DragEvent, type ReactNode } from 'react';

import { words } from '../words/words.ts';

export interface DropPlaceProps {
  readonly className: string;
  readonly onFiles: (files: readonly File[]) => void;
  readonly children: ReactNode;
}

/** Files let go anywhere on the screen are taken. */
export function DropPlace({ className, onFiles, children }: DropPlaceProps) {
  const [dragging, setDragging] = useState(false);
  const drop = (event: DragEvent) => {
    event.preventDefault();
    setDragging(false);
    const files = [...event.dataTransfer.files];
    if (files.length > 0) onFiles(files);
  };
  return (
    <div
      className={className}
      onDragOver={(event) => {
        event.preventDefault();
        setDragging(true);
      }}
      onDragLeave={(event) => {
        if (!event.currentTarget.contains(event.relatedTarget as Node | null)) setDragging(false);
      }}
      onDrop={drop}
    >
      {children}
      {dragging && <p className="shed-drop">{words.start.dropHere}</p>}
    </div>
  );
}
