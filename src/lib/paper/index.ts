/**
 * Sheets on paper, as PDF: pages, fonts, the site drawing as vectors, plates, answer boxes, workings. Words and numbers
 * come in from outside. Runs on the server only.
 */
export { PAGE_SIZES, type PageSize } from './page.ts';
export type { PrintedAsk } from './blocks/answer.ts';
export type { TableOptions, TableRow } from './blocks/table.ts';
export type { PrintedProblem } from './problem-page.ts';
export { type KeyAsk, type KeyCheck, type KeyProblem, type KeyStep } from './key-blocks.ts';
export { printCopies, type Copy, type KeyCopy, type PaperWords, type SheetCopy } from './print-copies.ts';
export { type PaperOptions } from './paper-document.ts';
export { printCertificate, type CertificateRow, type PrintedCertificate } from './certificate.ts';
