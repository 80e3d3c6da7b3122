/**
 * Draws the machines of the flow as Mermaid diagrams, for DEVELOPERS.md. Run it after a machine changed:
 * `node_modules/.bin/node src/cli/machine-pictures.ts` writes them between the marks in that file.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { argv } from 'node:process';
import { fileURLToPath } from 'node:url';
import type { AnyStateMachine } from 'xstate';
import { checkMachine, lessonMachine, setMachine, siteProblemMachine } from '#lib/flow/index.ts';

const DOCUMENT = fileURLToPath(new URL('../../DEVELOPERS.md', import.meta.url));
const BEGIN = '<!-- machines: begin -->';
const END = '<!-- machines: end -->';

/** @returns the label of an arrow: the event, and its guard in brackets. */
function label(event: string, guard: unknown): string {
	return typeof guard === 'string' ? `${event} [${guard}]` : event;
}

/** @returns a machine as a Mermaid state diagram: made from the machine, so that it cannot tell anything else. */
export function mermaid(machine: AnyStateMachine): string {
	const lines = ['stateDiagram-v2'];
	const initial = machine.root.initial.target?.[0];
	if (initial !== undefined) lines.push(`  [*] --> ${initial.key}`);
	for (const state of Object.values(machine.root.states)) {
		for (const [event, list] of state.transitions) {
			for (const { target, guard } of list) {
				const to = target?.[0]?.key ?? state.key;
				lines.push(`  ${state.key} --> ${to}: ${label(event, guard)}`);
			}
		}
		if (state.type === 'final') lines.push(`  ${state.key} --> [*]`);
	}
	return lines.join('\n');
}

/** @returns the whole passage with all machines' pictures. */
export function machinePassage(): string {
	const pictures = [
		['A lesson', lessonMachine],
		['A check: lesson check and final check', checkMachine],
		['A site problem', siteProblemMachine],
		['A practice set', setMachine]
	] as const;
	const parts = pictures.map(([name, machine]) => `**${name}**\n\n\`\`\`mermaid\n${mermaid(machine)}\n\`\`\``);
	return [BEGIN, ...parts, END].join('\n\n');
}

/** @returns the passage as it stands in a document, or undefined if the marks are not there. */
export function passageIn(document: string): string | undefined {
	const from = document.indexOf(BEGIN);
	const to = document.indexOf(END);
	return from < 0 || to < from ? undefined : document.slice(from, to + END.length);
}

if (argv[1] === fileURLToPath(import.meta.url)) {
	const document = readFileSync(DOCUMENT, 'utf8');
	const before = passageIn(document);
	if (before === undefined) throw new Error('DEVELOPERS.md has no marks for the machines');
	writeFileSync(DOCUMENT, document.replace(before, machinePassage()));
}
