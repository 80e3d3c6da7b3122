/** Somebody who goes through the course: the same who fills the invented organisation. */
export { CourseDriver, answerEvent, checkAnswer, type Plan, type Told, type ToldOfCheck, type Transport } from '#lib/server/people/demo-learner.ts';
