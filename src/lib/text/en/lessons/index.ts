/** The lessons' texts. */
import { freeFall } from './free-fall.ts';

export const lessons = {
	of: { 'free-fall': freeFall }
};
