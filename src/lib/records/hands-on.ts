/** What the hands-on part of a person's training is made of. */

/** What somebody must have been seen doing, in the order in which it is asked. */
export const HANDS_ON_CHECKS = ['inspection', 'donning', 'connecting', 'anchorage-choice', 'rescue-plan'] as const;
export type HandsOnCheck = (typeof HANDS_ON_CHECKS)[number];

/** In which capacity a trainer signs, as law names it. @source 29 CFR 1926.32(f), 1926.32(m); from memory */
export const CAPACITIES = ['competent-person', 'qualified-person'] as const;
export type Capacity = (typeof CAPACITIES)[number];
