/** Languages that numbers are read and written in. */
export type Language = 'en' | 'es';
