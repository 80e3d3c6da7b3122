/** Whole problems of a lesson. */
export { default as Problem } from '../../../problem/Problem.svelte';
