/** Why a backup or a restore was not done, in the form that refusals have. */
export class KeepingFault extends Error {
	/** What it is about: an argument, or a variable of the environment. */
	readonly field: string;
	readonly problem: string;
	readonly remedy: string;

	constructor(field: string, problem: string, remedy: string) {
		super(`${field} ${problem}; ${remedy}`);
		this.field = field;
		this.problem = problem;
		this.remedy = remedy;
	}
}
