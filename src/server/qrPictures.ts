import { encode } from 'uqr';

/** Light cells round the code: readers find it by them (ISO/IEC 18004 asks for four). */
const QUIET_CELLS = 4;

/** Colours of their own, so that the code is dark on light in every terminal: 231 white, 16 black. */
const colour = (dark: boolean) => (dark ? 16 : 231);

/** A code for the terminal: two rows of cells in a line of half blocks, with colours. */
export function qrForTerminal(text: string): string {
  const { data, size } = encode(text, { border: QUIET_CELLS });
  const lines: string[] = [];
  for (let row = 0; row < size; row += 2) {
    let line = '';
    for (let column = 0; column < size; column++) {
      const upper = colour(data[row]![column]!);
      const lower = colour(data[row + 1]?.[column] ?? false);
      line += `\u001b[38;5;${upper};48;5;${lower}m▀`;
    }
    lines.push(`${line}\u001b[0m`);
  }
  return lines.join('\n');
}

/** A code as a drawing: one path of the dark cells on a light ground, whatever the page's colours. */
export function qrForPage(text: string, label: string): string {
  const { data, size } = encode(text, { border: QUIET_CELLS });
  const cells = data.flatMap((row, y) =>
    row.flatMap((dark, x) => (dark ? [`M${x} ${y}h1v1h-1z`] : [])),
  );
  return (
    `<svg class="code" viewBox="0 0 ${size} ${size}" role="img" aria-label="${label}" ` +
    `shape-rendering="crispEdges"><rect width="${size}" height="${size}" fill="#fff"/>` +
    `<path d="${cells.join('')}" fill="#000"/></svg>`
  );
}
