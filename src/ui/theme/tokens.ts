/**
 * The colours of the sheet, all greys without chroma so that the page does not tint the judgement of a flower (the reason
 * ISO 3664 gives for neutral surrounds). Values ours. `tokens.css` holds the same for the style sheets; a test holds the
 * two equal, and their contrast (WCAG 2.2, 1.4.3 and 1.4.11).
 */
export const TOKENS = {
  /** The sheet. */
  paper: '#e4e4e4',
  /** Fields and the picture for the partner. */
  'paper-light': '#ededed',
  white: '#ffffff',
  /** Text, frame, needles. */
  ink: '#191919',
  /** Captions, dimensions, wanted bands. */
  ink2: '#484848',
  /** Hairlines that carry meaning, borders of fields. */
  line: '#757575',
  /** Rules between rows; nothing is lost if they are not seen. */
  faint: '#b4b4b4',
  /** What is open, chosen or can be pressed: a dull verdigris. */
  accent: '#1f4f57',
  /** Marks over flowers: a core on a halo. */
  core: '#111111',
  halo: '#ffffff',
} as const

/** Words, for canvas text as in the style sheets. */
export const LETTERING = "'Ysabeau Office', 'Gill Sans', 'Gill Sans Nova', 'Segoe UI', sans-serif"
export const CAPTION = "Newsreader, 'Iowan Old Style', Georgia, serif"
