import { authoring } from './authoring.ts';
import { board } from './board.ts';
import { paper } from './paper.ts';
import { crewPicture } from './picture.ts';
import { roster } from './roster.ts';
import { sets } from './sets.ts';
import { signOff } from './sign-off.ts';

/** What pages of trainers need beside the rest, in English: learners never load it. */
export const staff = Object.freeze({
	authoring,
	board,
	crewPicture,
	paper,
	roster,
	sets,
	signOff
});

/** What every language holds for trainers. */
export type StaffMessages = typeof staff;
