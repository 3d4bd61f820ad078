/** Style sheet of the connect page: the app's paper, ink and accent, at reading size. */
export const CONNECT_STYLE = `:root {
  color-scheme: light dark;
  --ground: light-dark(#f4efe3, #1b1c1d);
  --sheet: light-dark(#fbf8f0, #252728);
  --ink: light-dark(#1a1916, #f3efe4);
  --soft: light-dark(#4e493f, #c0baad);
  --hairline: light-dark(#b9ae98, #5b5d5f);
  --accent: light-dark(#0a5730, #4be38d);
  --warning: light-dark(#743a00, #ffbf5e);
  --tyre: light-dark(#34322e, #8b8d90);
}
* { box-sizing: border-box; }
body {
  margin: 0 auto;
  max-width: 1180px;
  padding: 24px;
  background: var(--ground);
  color: var(--ink);
  font: 20px/1.45 Seravek, 'Gill Sans Nova', Ubuntu, Calibri, 'DejaVu Sans', 'Segoe UI', sans-serif;
}
h1 { font-size: 36px; line-height: 1.15; margin: 0; }
h2 { font-size: 26px; line-height: 1.2; margin: 0; }
p { margin: 12px 0; max-width: 70ch; }
header { display: flex; flex-wrap: wrap; gap: 16px; justify-content: space-between; align-items: start; }
a { color: var(--accent); }
.touch {
  display: inline-flex;
  align-items: center;
  min-height: 60px;
  padding: 0 24px;
  border: 2px solid var(--accent);
  border-radius: 4px;
  background: var(--accent);
  color: var(--ground);
  font-weight: 700;
  text-decoration: none;
}
.touch.plain { background: none; color: var(--accent); }
.touch:focus-visible { outline: 4px solid var(--ink); outline-offset: 3px; }
.scan { display: flex; flex-wrap: wrap; gap: 24px; align-items: center; margin: 16px 0 32px; }
.code { width: min(300px, 80vw); border: 1px solid var(--hairline); }
.address { font-size: 26px; font-weight: 700; overflow-wrap: anywhere; }
ol { list-style: none; margin: 0; padding: 0; display: grid; gap: 24px; counter-reset: step; }
@media (min-width: 900px) { ol { grid-template-columns: repeat(3, 1fr); } }
li {
  counter-increment: step;
  display: flex;
  flex-direction: column;
  padding: 16px;
  background: var(--sheet);
  border: 1px solid var(--hairline);
  border-radius: 4px;
}
li h2::before { content: counter(step) '. '; }
li svg { width: 100%; max-width: 300px; margin: 12px auto; }
li .touch { margin-top: auto; justify-content: center; }
section { margin-top: 32px; }
code { display: block; font: 20px/1.5 'DejaVu Sans Mono', Menlo, Consolas, monospace; overflow-wrap: anywhere; }
.body { fill: var(--tyre); }
.screen { fill: var(--ground); }
.sign { fill: none; stroke: var(--warning); stroke-width: 6; stroke-linejoin: round; }
.mark, .line { fill: none; stroke: var(--ink); stroke-width: 6; stroke-linecap: round; stroke-linejoin: round; }
.mark { stroke: var(--warning); }
.dot { fill: var(--warning); }
.thin { stroke-width: 3; }
.sheet { fill: var(--sheet); stroke: var(--ink); stroke-width: 3; }
.seal { fill: var(--sheet); stroke: var(--accent); stroke-width: 3; }
.switch { fill: var(--accent); }
.knob { fill: var(--ground); }
.ball { fill: var(--sheet); stroke: var(--ink); stroke-width: 3; }
.tyre { fill: var(--tyre); }
.rim { fill: none; stroke: var(--ink); stroke-width: 3; }
.laser { stroke: var(--accent); stroke-width: 4; }
`;
