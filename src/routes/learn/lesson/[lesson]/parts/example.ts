/** The shown example: loaded when it is needed. */
export { default as Example } from './Example.svelte';
