import type { lessons as en } from '../../en/lessons/index.ts';
import { freeFall } from './free-fall.ts';

export const lessons: typeof en = {
	of: { 'free-fall': freeFall }
};
