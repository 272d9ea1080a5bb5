/**
 * The font of printed files: Arimo, under the SIL Open Font License 1.1. Its widths are those of
 * Helvetica and Arial, so that drawings shown with either have the same words in the same room. The
 * files are large: import this file only where a PDF is wanted.
 */
import bold from '@expo-google-fonts/arimo/700Bold/Arimo_700Bold.ttf';
import regular from '@expo-google-fonts/arimo/400Regular/Arimo_400Regular.ttf';
import type { TextShape } from './scene';

/** The name of the font and the bytes of its file for each weight. */
export const FONT_FILES: Readonly<
  Record<TextShape['weight'], { readonly name: string; readonly bytes: Uint8Array }>
> = {
  normal: { name: 'Arimo-Regular', bytes: regular },
  bold: { name: 'Arimo-Bold', bytes: bold },
};
