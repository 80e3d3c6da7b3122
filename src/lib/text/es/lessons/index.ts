import type { lessons as en } from '../../en/lessons/index.ts';
import { availableClearance } from './available-clearance.ts';
import { beforeAndAfter } from './before-and-after.ts';
import { course } from './course.ts';
import { demands, facts } from './facts.ts';
import { force } from './force.ts';
import { freeFall } from './free-fall.ts';
import { label } from './label.ts';
import { requiredClearance } from './required-clearance.ts';
import { stages } from './stages.ts';
import { swing } from './swing.ts';

/** Digits with points and commas between them, as a law in English prints a number. */
const NUMBER = /\d[\d.,]*\d/g;

export const lessons: typeof en = {
	course,
	facts,
	demands,
	printed: ({ value }) => value.replace(NUMBER, (number) => number.replace(/[.,]/g, (mark) => (mark === '.' ? ',' : '.'))),
	of: {
		stages,
		label,
		'free-fall': freeFall,
		'required-clearance': requiredClearance,
		'available-clearance': availableClearance,
		force,
		swing,
		'before-and-after': beforeAndAfter
	}
};
