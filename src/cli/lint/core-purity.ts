import { builtinModules } from 'node:module';
import type { Rule, Scope } from 'eslint';
import type { Node } from 'estree';

/** Packages and prefixes that tie a module to a screen, a server or a machine. */
const BOUND = /^(svelte|@sveltejs|@xstate\/svelte|\$app|\$env|\$service-worker|kysely|pg)(\/|$)/;

/** Names of the surroundings that give a different value on each call, or an effect, and what to do instead. */
const SURROUNDINGS: Readonly<Record<string, string>> = {
	Date: 'time is passed in, as an ISO text or a number of milliseconds',
	performance: 'time is passed in',
	setTimeout: 'waiting is an effect of the caller',
	setInterval: 'waiting is an effect of the caller',
	setImmediate: 'waiting is an effect of the caller',
	requestAnimationFrame: 'waiting is an effect of the caller',
	crypto: 'chance and hashing are passed in',
	process: 'settings are passed in',
	fetch: 'effects come in from outside',
	console: 'return what is to be told',
	window: 'the core knows no browser',
	document: 'the core knows no browser',
	navigator: 'the core knows no browser',
	localStorage: 'the core knows no browser',
	globalThis: 'the core knows no surroundings'
};

/** References to a global of that name which use its value, not its type. */
function* globalUses(sourceCode: Rule.RuleContext['sourceCode'], name: string) {
	for (const scope of sourceCode.scopeManager.scopes) {
		for (const reference of scope.references) {
			if (reference.identifier.name !== name) continue;
			if ((reference.resolved?.defs.length ?? 0) > 0 || isType(reference)) continue;
			yield reference.identifier;
		}
	}
}

/** Whether a reference stands in a type, where nothing runs. */
function isType(reference: Scope.Reference): boolean {
	return 'isTypeReference' in reference && reference.isTypeReference === true;
}

/** Core folders run anywhere and give the same answer each time: nothing of the surroundings enters. */
export const corePurity: Rule.RuleModule = {
	meta: {
		type: 'problem',
		docs: { description: 'no framework, no Node, no clock, no chance in the core' },
		schema: [
			{
				type: 'object',
				properties: { exact: { type: 'boolean' } },
				additionalProperties: false
			}
		],
		messages: {
			package:
				'`{{source}}` does not belong into the core: it must run in browser, server and test alike.',
			surroundings: '`{{name}}` does not belong into the core: {{instead}}.',
			random: '`Math.random` does not belong into the core: the seed is passed in.',
			inexact:
				'`{{name}}` may give another last digit in another engine, and draws must not differ: use + - * / and Math.sqrt.'
		}
	},
	create(context) {
		const options: { exact?: boolean } = context.options[0] ?? {};
		const exact = options.exact === true;

		function checkSource(node: Node, source: unknown) {
			if (typeof source !== 'string') return;
			const builtin = source.startsWith('node:') || builtinModules.includes(source);
			if (builtin || BOUND.test(source)) {
				context.report({ node, messageId: 'package', data: { source } });
			}
		}

		return {
			'Program:exit'() {
				for (const [name, instead] of Object.entries(SURROUNDINGS)) {
					for (const node of globalUses(context.sourceCode, name)) {
						context.report({ node, messageId: 'surroundings', data: { name, instead } });
					}
				}
			},
			MemberExpression(node) {
				if (node.object.type !== 'Identifier' || node.object.name !== 'Math') return;
				const name = node.property.type === 'Identifier' ? node.property.name : 'Math[…]';
				if (name === 'random') context.report({ node, messageId: 'random' });
				else if (exact && !EXACT_MATH.has(name)) {
					context.report({ node, messageId: 'inexact', data: { name: `Math.${name}` } });
				}
			},
			BinaryExpression(node) {
				if (exact && node.operator === '**') {
					context.report({ node, messageId: 'inexact', data: { name: '**' } });
				}
			},
			ImportDeclaration(node) {
				checkSource(node, node.source.value);
			},
			ExportNamedDeclaration(node) {
				checkSource(node, node.source?.value);
			},
			ExportAllDeclaration(node) {
				checkSource(node, node.source.value);
			},
			ImportExpression(node) {
				checkSource(node, node.source.type === 'Literal' ? node.source.value : undefined);
			}
		};
	}
};

/** Members of Math whose result IEEE 754 or the language fixes to the last bit. */
const EXACT_MATH = new Set([
	'sqrt',
	'floor',
	'ceil',
	'round',
	'trunc',
	'abs',
	'sign',
	'min',
	'max',
	'imul',
	'fround',
	'clz32',
	'PI'
]);
