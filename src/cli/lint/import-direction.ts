import { dirname, relative, resolve, sep } from 'node:path';
import type { Rule } from 'eslint';
import type { Node } from 'estree';
import { FACES, MAY_IMPORT, READS_SHARED } from './folders.ts';

/** Where a file stands in the repository, as far as imports are concerned. */
interface Place {
	/** First step of the path: `lib`, `routes`, `cli`, `tests`, `shared`, or `other`. */
	area: string;
	/** The folder of src/lib, or '' outside it. */
	folder: string;
	/** The path within the folder. */
	rest: string;
}

/** A path relative to the repository root, with forward slashes, told apart by area and folder. */
function place(path: string): Place {
	const steps = path.split('/');
	if (steps[0] === 'src' && steps[1] === 'lib' && steps.length > 3) {
		return { area: 'lib', folder: steps[2] ?? '', rest: steps.slice(3).join('/') };
	}
	if (steps[0] === 'src' && (steps[1] === 'routes' || steps[1] === 'cli')) {
		return { area: steps[1], folder: '', rest: steps.slice(2).join('/') };
	}
	if (steps[0] === 'tests' || steps[0] === 'shared') {
		return { area: steps[0], folder: '', rest: steps.slice(1).join('/') };
	}
	return { area: 'other', folder: '', rest: path };
}

/** The repository path that an import names, or null when it names a package. */
function target(source: string, file: string): string | null {
	if (source.startsWith('#lib/')) return `src/lib/${source.slice('#lib/'.length)}`;
	if (source.startsWith('#shared/')) return `shared/${source.slice('#shared/'.length)}`;
	if (!source.startsWith('.')) return null;
	return resolve('/', dirname(file), source).slice(1).split(sep).join('/');
}

/** A folder's name as people read it, with what it stands on. */
function standsOn(folder: string): string {
	const below = Object.keys(MAY_IMPORT[folder] ?? {});
	return below.length === 0 ? 'nothing' : below.join(', ');
}

/** Which way round the import belongs, as the end of a message. */
function wayRound(from: string, to: string): string {
	return MAY_IMPORT[to]?.[from] !== undefined
		? `${to} imports ${from}, not the other way round: move what both need into ${from} or below, or pass it in`
		: `neither imports the other: what both need belongs into a folder below both, or is passed in from above`;
}

/** The folders that may read a file of shared/. */
function readersOf(file: string): string[] {
	return Object.entries(READS_SHARED)
		.filter(([, beginnings]) => beginnings.some((beginning) => file.startsWith(beginning)))
		.map(([folder]) => folder);
}

/** Holds the table of folders.ts, and lets outsiders into a folder by its index.ts alone. */
export const importDirection: Rule.RuleModule = {
	meta: {
		type: 'problem',
		docs: { description: 'imports follow the table of folders, and enter a folder by its index.ts' },
		schema: [],
		messages: {
			direction: '{{from}} may not import {{to}}: {{wayRound}}. ({{from}} stands on: {{standsOn}}.)',
			typesOnly:
				'{{from}} may import only types of {{to}} (`import type`): values of {{to}} are passed in from above.',
			face: 'Outside {{to}}, import `#lib/{{to}}/index.ts`: {{rest}} is its inside. What others need, its index.ts exports.',
			relative: 'From another folder, import `#lib/{{to}}/index.ts`, not a relative path.',
			own: 'Inside {{to}}, import the file itself by a relative path: its index.ts is for outsiders.',
			up: '{{from}} may not import {{area}}: {{area}} stands above src/lib and imports it, not the other way round.',
			shared:
				'{{from}} may not read shared/{{rest}}; {{readers}} does, and gives it out with its citation (src/cli/lint/folders.ts).',
			unknown:
				'src/lib/{{folder}} is not in the table of src/cli/lint/folders.ts: say there what it may import.'
		}
	},
	create(context) {
		const file = relative(context.cwd, context.filename).split(sep).join('/');
		const from = place(file);

		function report(node: Node, messageId: string, data: Record<string, string> = {}) {
			context.report({ node, messageId, data });
		}

		function checkLibrary(node: Node, source: string, to: Place, typesOnly: boolean) {
			if (from.area === 'lib' && from.folder === to.folder) {
				if (!source.startsWith('.')) report(node, 'own', { to: to.folder });
				return;
			}
			if (source.startsWith('.')) report(node, 'relative', { to: to.folder });
			else if (!FACES.includes(to.rest)) report(node, 'face', { to: to.folder, rest: to.rest });
			if (from.area !== 'lib') return;
			const reach = MAY_IMPORT[from.folder]?.[to.folder];
			if (reach === undefined) {
				report(node, 'direction', {
					from: from.folder,
					to: to.folder,
					wayRound: wayRound(from.folder, to.folder),
					standsOn: standsOn(from.folder)
				});
			} else if (reach === 'types' && !typesOnly) {
				report(node, 'typesOnly', { from: from.folder, to: to.folder });
			}
		}

		function check(node: Node, source: unknown, typesOnly: boolean) {
			if (typeof source !== 'string') return;
			const path = target(source, file);
			if (path === null) return;
			const to = place(path);
			if (to.area === 'lib') {
				checkLibrary(node, source, to, typesOnly);
			} else if (to.area === 'shared') {
				const readers = readersOf(to.rest);
				if (from.area !== 'lib' || !readers.includes(from.folder)) {
					report(node, 'shared', { from: from.folder || from.area, rest: to.rest, readers: readers.join(', ') || 'no folder' });
				}
			} else if (to.area !== from.area && to.area !== 'other') {
				report(node, 'up', { from: from.folder || from.area, area: to.area });
			}
		}

		if (from.area === 'tests' || from.area === 'other') return {};
		return {
			Program(node) {
				if (from.area === 'lib' && MAY_IMPORT[from.folder] === undefined) {
					context.report({
						loc: node.loc ?? { line: 1, column: 0 },
						messageId: 'unknown',
						data: { folder: from.folder }
					});
				}
			},
			ImportDeclaration(node) {
				check(node, node.source.value, onlyTypes(node));
			},
			ExportNamedDeclaration(node) {
				check(node, node.source?.value, onlyTypes(node));
			},
			ExportAllDeclaration(node) {
				check(node, node.source.value, onlyTypes(node));
			},
			ImportExpression(node) {
				check(node, node.source.type === 'Literal' ? node.source.value : undefined, false);
			}
		};
	}
};

/** Whether an import or export statement carries types alone (`import type …`, `export type … from`). */
function onlyTypes(node: object): boolean {
	return (
		('importKind' in node && node.importKind === 'type') ||
		('exportKind' in node && node.exportKind === 'type')
	);
}
