import type { Rule } from 'eslint';

/** Numbers that mean no limit wherever they stand: counting, halving, turning round. */
const NEUTRAL = new Set([0, 1, 2, 0.5]);

/** Methods whose number says how to write or cut a text, not how far one may fall. */
const TEXT_METHODS = new Set([
	'toFixed',
	'toPrecision',
	'toString',
	'slice',
	'substring',
	'padStart',
	'padEnd',
	'repeat',
	'at',
	'charCodeAt',
	'codePointAt',
	'parseInt'
]);

/** Schema methods that bound how long a text or list or how great a count may be, and the schemas of which they do. */
const COUNT_BOUNDS = new Set(['min', 'max', 'length']);
const COUNTED = new Set(['string', 'array', 'int']);

/** What a docstring must say: a source for a fact, or a reason for a choice of our own. */
const ACCOUNT = /@(source|reason)\s+\S[^\n]{9,}/;

/** 10, 100, 1000 …, and 1e-6, 1e-9 …: scaling, and how close counts as equal. */
function isPowerOfTen(value: number): boolean {
	return /^1(0+|e[+-]?\d+)$/.test(String(value)) || value === 1e-6;
}

/** The operator that a literal stands under, a sign before it left out. */
function operatorAbove(node: Rule.Node): string | null {
	const parent = node.parent;
	if (parent?.type === 'UnaryExpression') return operatorAbove(parent);
	if (parent?.type === 'BinaryExpression' || parent?.type === 'AssignmentExpression') {
		return parent.operator;
	}
	return null;
}

/** The name at the end of what is called: `max` in `z.string().max(64)`. */
function calledName(callee: { type: string }): string {
	if (callee.type === 'Identifier' && 'name' in callee) return String(callee.name);
	if (callee.type !== 'MemberExpression' || !('property' in callee)) return '';
	return calledName(callee.property as { type: string });
}

/** Whether a call bounds a count in a schema, such as `z.array(item).max(40)`; a measured `z.number()` is none. */
function boundsCount(callee: { type: string }): boolean {
	if (!COUNT_BOUNDS.has(calledName(callee))) return false;
	let at: unknown = callee;
	while (isObject(at)) {
		if (at.type === 'CallExpression' && isObject(at.callee)) {
			if (COUNTED.has(calledName(at.callee))) return true;
			at = at.callee;
		} else at = at.type === 'MemberExpression' ? at.object : null;
	}
	return false;
}

function isObject(value: unknown): value is { type: string; [key: string]: unknown } {
	return typeof value === 'object' && value !== null && 'type' in value;
}

/** Whether the place of a literal shows that it is no limit. */
function isHarmless(node: Rule.Node, value: number): boolean {
	if (NEUTRAL.has(value)) return true;
	const parent = node.parent;
	if (parent?.type === 'MemberExpression' && parent.computed && parent.property === node) {
		return Number.isInteger(value) && value < 10;
	}
	if (parent?.type === 'CallExpression' && parent.callee !== node) {
		if (boundsCount(parent.callee)) return true;
		if (TEXT_METHODS.has(calledName(parent.callee))) return Number.isInteger(value) && value <= 36;
	}
	if (isPowerOfTen(value)) {
		return value <= 1e-6 || ['*', '/', '%', '*=', '/='].includes(operatorAbove(node) ?? '');
	}
	return false;
}

/** The outermost statement of a `const` that the node stands in, or null. */
function declaration(node: Rule.Node): Rule.Node | null {
	for (let at: Rule.Node | null = node; at !== null; at = at.parent) {
		if (at.type === 'FunctionDeclaration') return null;
		if (at.type === 'VariableDeclaration' && at.kind === 'const') {
			return at.parent?.type === 'ExportNamedDeclaration' ? at.parent : at;
		}
	}
	return null;
}

/** A number that may be a limit of law or practice says where it comes from, or lives in shared/. */
export const numericLimit: Rule.RuleModule = {
	meta: {
		type: 'problem',
		docs: { description: 'no numeric limit in the source without its source or reason' },
		schema: [],
		messages: {
			bare:
				'{{value}} may be a limit. A limit of law, practice or equipment lives in shared/ with its citation; ' +
				'any other number is a `const` whose docstring says `@source …` or `@reason …`.',
			account:
				'The docstring of this `const` must say where {{value}} comes from: `@source …` for a fact, `@reason …` for a choice of our own.'
		}
	},
	create(context) {
		function check(node: Rule.Node, value: number) {
			if (isHarmless(node, value)) return;
			const holder = declaration(node);
			const comments = holder === null ? [] : context.sourceCode.getCommentsBefore(holder);
			const docstring = comments.at(-1);
			if (docstring?.type === 'Block' && ACCOUNT.test(docstring.value)) return;
			context.report({
				node,
				messageId: docstring === undefined ? 'bare' : 'account',
				data: { value: String(value) }
			});
		}
		return {
			Literal(node) {
				if (isInType(node)) return;
				if (typeof node.value === 'number') check(node, node.value);
				else if (typeof node.value === 'bigint') check(node, Number(node.value));
			}
		};
	}
};

/** Whether a literal is a type (`type Count = 3`), which holds no value. */
function isInType(node: Rule.Node): boolean {
	const type: string = node.parent?.type ?? '';
	return type === 'TSLiteralType';
}
