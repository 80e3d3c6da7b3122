/** What marks answers: loaded behind the first paint. */
export { gradeProblem, gradeWalk, walkOf } from '#lib/grading/index.ts';
export { SLIP_SET_VERSION } from '#lib/slips/index.ts';
