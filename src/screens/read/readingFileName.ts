/** Characters that one system or another does not allow in a file's name. */
const NOT_IN_FILE_NAMES = /[\\/:*?"<>|\p{Cc}]+/gu;

/** `<label>.reading.json`, the label made fit for a file's name; "sweep" when it has none. */
export function readingFileName(label: string | undefined): string {
  const fit = (label ?? '')
    .replace(NOT_IN_FILE_NAMES, ' ')
    .trim()
    .replace(/\s+/g, '-')
    .replace(/^[.-]+/, '');
  return `${fit === '' ? 'sweep' : fit}.reading.json`;
}
