import type { Rule } from 'eslint';
import type { Node } from 'estree';

/** Node runs the sources as they are: a path of ours needs its extension, a JSON file its attribute. */
export const importForm: Rule.RuleModule = {
	meta: {
		type: 'problem',
		docs: { description: 'imports that Node can run without a build' },
		schema: [],
		messages: {
			extension: 'Write the extension (`{{source}}.ts`): Node runs this file as it is.',
			json: "Write `with { type: 'json' }`: Node does not import JSON without it."
		}
	},
	create(context) {
		function check(node: Node, source: unknown, attributes: readonly unknown[]) {
			if (typeof source !== 'string' || !/^(\.|#lib\/|#shared\/)/.test(source)) return;
			// SvelteKit writes ./$types itself; only types come from there.
			if (source.endsWith('/$types')) return;
			if (source.endsWith('.json')) {
				if (attributes.length === 0) context.report({ node, messageId: 'json' });
			} else if (!/\.(ts|js|svelte|css|svg)$/.test(source)) {
				context.report({ node, messageId: 'extension', data: { source } });
			}
		}
		return {
			ImportDeclaration(node) {
				check(node, node.source.value, node.attributes);
			},
			ExportNamedDeclaration(node) {
				check(node, node.source?.value, node.attributes);
			},
			ExportAllDeclaration(node) {
				check(node, node.source.value, node.attributes);
			}
		};
	}
};
