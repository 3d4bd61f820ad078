import { useEffect, useState } from 'react';

import type { Reading } from '../../contract/reading.ts';
import { words } from '../words/words.ts';
import { readingFileName } from './readingFileName.ts';

export interface DownloadReadingProps {
  readonly reading: Reading;
  readonly label: string | undefined;
}

/** A link to the reading as a file, exactly as the measuring core gave it. */
export function DownloadReading({ reading, label }: DownloadReadingProps) {
  const [address, setAddress] = useState<string>();
  useEffect(() => {
    const text = `${JSON.stringify(reading, null, 2)}\n`;
    const url = URL.createObjectURL(new Blob([text], { type: 'application/json' }));
    setAddress(url);
    return () => URL.revokeObjectURL(url);
  }, [reading]);
  return (
    <a
      className="plain"
      data-role="download-reading"
      href={address}
      download={readingFileName(label)}
    >
      {words.reading.download}
    </a>
  );
}
