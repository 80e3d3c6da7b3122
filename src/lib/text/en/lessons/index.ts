/** The lessons' texts. */
import type { LessonId } from '#lib/course/index.ts';
import type { LessonText } from '../../lesson-text.ts';
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

export const lessons = {
	course,
	facts,
	demands,
	/** A number as a law prints it, with the marks of this language. */
	printed: ({ value }: { value: string }) => value,
	of: {
		stages,
		label,
		'free-fall': freeFall,
		'required-clearance': requiredClearance,
		'available-clearance': availableClearance,
		force,
		swing,
		'before-and-after': beforeAndAfter
	} as Readonly<Record<LessonId, LessonText>>
};
