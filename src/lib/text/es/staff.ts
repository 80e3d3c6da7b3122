import type { StaffMessages } from '../en/staff.ts';
import { authoring } from './authoring.ts';
import { board } from './board.ts';
import { paper } from './paper.ts';
import { crewPicture } from './picture.ts';
import { roster } from './roster.ts';
import { sets } from './sets.ts';
import { signOff } from './sign-off.ts';

export const staff: StaffMessages = Object.freeze({
	authoring,
	board,
	crewPicture,
	paper,
	roster,
	sets,
	signOff
});
