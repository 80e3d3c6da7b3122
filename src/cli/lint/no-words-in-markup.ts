import type { Rule } from 'eslint';

/** Attributes that a person reads or hears. */
const READ_ATTRIBUTES = new Set([
	'alt',
	'title',
	'label',
	'placeholder',
	'content',
	'summary',
	'aria-label',
	'aria-description',
	'aria-placeholder',
	'aria-roledescription',
	'aria-valuetext'
]);

/** The part of svelte-eslint-parser's tree that is looked at here. */
interface MarkupNode {
	type: string;
	parent?: MarkupNode;
	value?: unknown;
	key?: { name?: unknown };
	name?: { name?: unknown };
	expression?: Expression | null;
	attributes?: MarkupNode[];
	startTag?: MarkupNode;
}

/** An expression in braces, as far as it can hold words itself. */
interface Expression {
	type: string;
	value?: unknown;
	quasis?: { value: { raw: string } }[];
	consequent?: Expression;
	alternate?: Expression;
	left?: Expression;
	right?: Expression;
	expression?: Expression;
}

/** Whether a text has letters, once character references such as &nbsp; are left out. */
function hasWords(text: unknown): boolean {
	return typeof text === 'string' && /\p{L}/u.test(text.replace(/&#?\w+;/g, ''));
}

/** The first words that an expression would put on the page by itself. Calls are the catalogue's business. */
function wordsIn(expression: Expression | null | undefined): string | null {
	switch (expression?.type) {
		case 'Literal':
			return hasWords(expression.value) ? String(expression.value) : null;
		case 'TemplateLiteral': {
			const part = expression.quasis?.find((quasi) => hasWords(quasi.value.raw));
			return part?.value.raw ?? null;
		}
		case 'ConditionalExpression':
			return wordsIn(expression.consequent) ?? wordsIn(expression.alternate);
		case 'LogicalExpression':
		case 'BinaryExpression':
			return wordsIn(expression.left) ?? wordsIn(expression.right);
		case 'TSAsExpression':
		case 'TSSatisfiesExpression':
			return wordsIn(expression.expression);
		default:
			return null;
	}
}

/** Whether a `content` attribute belongs to a meta tag that people read (its description, not its viewport). */
function isReadMeta(attribute: MarkupNode): boolean {
	const tag = attribute.parent;
	const name = tag?.attributes?.find((other) => other.key?.name === 'name');
	const [value] = Array.isArray(name?.value) ? name.value : [];
	const text: unknown = value?.value;
	return text === 'description';
}

/** Every word on a page comes from the message catalogue, so that each language has it. */
export const noWordsInMarkup: Rule.RuleModule = {
	meta: {
		type: 'problem',
		docs: { description: 'no words in components outside the message catalogue' },
		schema: [],
		messages: {
			words: '“{{words}}” belongs into the message catalogue (src/lib/text), in every language.'
		}
	},
	create(context) {
		function report(node: unknown, words: string) {
			context.report({
				node: node as Rule.Node,
				messageId: 'words',
				data: { words: words.trim().slice(0, 40) }
			});
		}
		return {
			SvelteText(node: unknown) {
				const text = node as MarkupNode;
				if (text.parent?.type === 'SvelteStyleElement' || !hasWords(text.value)) return;
				report(node, String(text.value));
			},
			SvelteMustacheTag(node: unknown) {
				const tag = node as MarkupNode;
				if (tag.parent?.type === 'SvelteAttribute') return;
				const words = wordsIn(tag.expression);
				if (words !== null) report(node, words);
			},
			SvelteAttribute(node: unknown) {
				const attribute = node as MarkupNode;
				const name = String(attribute.key?.name ?? '');
				if (!READ_ATTRIBUTES.has(name) || !Array.isArray(attribute.value)) return;
				if (name === 'content' && !isReadMeta(attribute)) return;
				for (const part of attribute.value as MarkupNode[]) {
					const words =
						part.type === 'SvelteLiteral'
							? hasWords(part.value)
								? String(part.value)
								: null
							: wordsIn(part.expression);
					if (words !== null) report(node, words);
				}
			}
		};
	}
};
