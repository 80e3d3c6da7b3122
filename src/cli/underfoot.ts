/** `npm run --silent underfoot -- COMMAND …`: one command, JSON on the output, problems on the error output. */
import { command } from './underfoot/commands.ts';
import { jsonOf, refuse, type Outcome } from './underfoot/outcome.ts';

/** Exit codes: done, records that do not hold, input that cannot be used, failure of the program. */
const EXIT = { done: 0, broken: 1, refused: 2, failed: 3 } as const;

function report(outcome: Outcome): number {
	switch (outcome.kind) {
		case 'done':
			process.stdout.write(jsonOf(outcome.output));
			return EXIT.done;
		case 'broken':
			process.stdout.write(jsonOf(outcome.output));
			return EXIT.broken;
		case 'help':
			process.stdout.write(outcome.text);
			return EXIT.done;
		case 'refused':
			process.stderr.write(jsonOf({ error: outcome.problems }));
			return EXIT.refused;
	}
}

// A reader that stops early (`… | head`) has what it wanted.
process.stdout.on('error', () => process.exit(EXIT.done));

try {
	process.exitCode = report(await command(process.argv.slice(2)));
} catch (error) {
	const problem = error instanceof Error ? error.message : String(error);
	report(refuse('underfoot', `failed: ${problem}`, 'please report this with the command and its input'));
	process.exitCode = EXIT.failed;
}
