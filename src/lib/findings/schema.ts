/** The zod schema of an answered picture, as the server reads it. */
import * as z from 'zod';

/** @reason more parts than any picture has; keeps a posted answer small */
const MOST_MARKS = 32;
/** @reason longer than any id */
const LONGEST_ID = 64;

const id = z.string().min(1).max(LONGEST_ID);

export const pictureAnswerSchema = z.strictObject({
	kind: z.literal('picture'),
	marked: z.array(id).max(MOST_MARKS).readonly(),
	choice: id
});
