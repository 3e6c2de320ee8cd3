/** The door to PDF, apart from the room's other: what only draws SVG need not load the libraries behind this one. */
export { type FontFiles, openFonts } from './sheet-fonts.ts';
export { writePdf } from './write-pdf.ts';
