/** The door for programs that run on a machine: fonts from the installed package. */
export { installedFonts } from './installed-fonts.ts';
