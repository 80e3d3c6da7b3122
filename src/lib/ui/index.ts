/**
 * Shared controls without knowledge of the subject. Words come in from outside. A page also imports
 * `#lib/ui/sheet.css` once.
 */
export { default as Button } from './Button.svelte';
export { default as CheckField } from './CheckField.svelte';
export { default as Choice } from './Choice.svelte';
export { default as Fold } from './Fold.svelte';
export { default as LabelPlate } from './LabelPlate.svelte';
export { default as Mark } from './Mark.svelte';
export { default as NumberField } from './NumberField.svelte';
export { default as ProgressMarks } from './ProgressMarks.svelte';
export { default as SelectField } from './SelectField.svelte';
export { default as StateMark } from './StateMark.svelte';
export { default as TextField } from './TextField.svelte';
