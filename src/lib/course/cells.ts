import type { Cell } from '#lib/scenario/index.ts';

/** Cells of the course: the stages of a fall, then those of the scenarios. They carry lessons, reports and the blueprint. */
export const COURSE_CELLS = [
	'stages',
	'label-and-mass',
	'free-fall',
	'required-clearance',
	'available-and-verdict',
	'force-and-limits',
	'swing-and-path',
	'decisions'
] as const satisfies readonly ('stages' | Cell)[];
export type CourseCell = (typeof COURSE_CELLS)[number];
