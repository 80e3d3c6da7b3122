import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { lessonMachine } from '#lib/flow/index.ts';
import { machinePassage, mermaid, passageIn } from '../../../src/cli/machine-pictures.ts';

test('DEVELOPERS.md shows the machines as they are', () => {
	const document = readFileSync(new URL('../../../DEVELOPERS.md', import.meta.url), 'utf8');
	expect(passageIn(document)).toBe(machinePassage());
});

test('a picture has an arrow for every transition', () => {
	const arrows = mermaid(lessonMachine).split('\n').filter((line) => line.includes('-->'));
	const transitions = Object.values(lessonMachine.root.states).flatMap((state) => [...state.transitions.values()].flat());
	expect(arrows.length).toBe(transitions.length + 1);
	expect(arrows).toContain('  ready --> checking: CHECK_STARTED');
});
