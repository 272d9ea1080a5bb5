/** The version, here so that telling it reads no file; a test holds it against package.json. */
export const VERSION = '0.1.0';
