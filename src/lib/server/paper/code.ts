/** The code that stands on a sheet: eight letters and digits of the sheet, then the number of the copy. */
import { grouped, readCode } from '../people/code.ts';

/** Characters of a sheet's own code: 40 bits. @reason never twice in an organisation, and quick to type. */
export const SHEET_CODE_LENGTH = 8;
/** Most copies of a sheet: two digits hold their numbers. */
export const MOST_COPIES = 40;

/** Most problems of all copies of a sheet. @reason what one file costs: ten seconds of the server and some 200 MB; more copies are another sheet. */
const MOST_PRINTED = 400;

/** @param problems of a copy, from 1. @returns how many copies a sheet has at most */
export function mostCopies(problems: number): number {
	return Math.max(1, Math.min(MOST_COPIES, Math.floor(MOST_PRINTED / problems)));
}

/** @returns the code as it is printed: `K7QM-2XWD-03`. */
export function printedCode(code: string, copy: number): string {
	return `${grouped(code)}-${String(copy).padStart(2, '0')}`;
}

/** @returns a code as it was typed, read as it was meant; undefined for what is no code of a copy. */
export function readPrintedCode(typed: string): { readonly code: string; readonly copy: number } | undefined {
	const all = readCode(typed);
	const tail = all.slice(SHEET_CODE_LENGTH);
	if (!/^\d{1,2}$/.test(tail)) return undefined;
	const copy = Number(tail);
	return copy < 1 || copy > MOST_COPIES ? undefined : { code: all.slice(0, SHEET_CODE_LENGTH), copy };
}
