export * from './node.ts';
export { evaluate, fromRecord, type Givens } from './evaluate.ts';
export { rewrite } from './rewrite.ts';
export { compile, run, valuesOf, type Program } from './compile.ts';
export { printText, type Writing } from './print.ts';
export { namedIn, stepsOf, type Step } from './steps.ts';
