import type { Node } from './node.ts';

/** How the leaves and signs of a formula are written. */
export interface Writing {
	/** The symbol or the number of a given. */
	readonly given: (id: string) => string;
	/** The symbol or number of a named part; undefined: write it out. */
	readonly named: (id: string) => string | undefined;
	readonly constant: (name: string, value: number) => string;
	readonly signs: 'plain' | 'typeset';
}

/** How tightly a printed node binds: a looser one inside a tighter one takes brackets. @reason four ranks. */
const BINDS = Object.freeze({ loose: 1, middle: 2, measured: 3, tight: 4 });

/**
 * @returns the formula as one line of text. With `signs: 'plain'` it is read by any calculator
 * (`sqrt((L + c)^2 - a^2)`); with `typeset` it uses − × √ ². The outermost named part is written out.
 */
export function printText(node: Node, writing: Writing): string {
	return write(node.kind === 'named' ? node.of : node, writing).text;
}

interface Piece {
	readonly text: string;
	readonly binds: number;
}

function write(node: Node, writing: Writing): Piece {
	const typeset = writing.signs === 'typeset';
	const inside = (child: Node, least: number): string => {
		const piece = write(child, writing);
		return piece.binds < least ? `(${piece.text})` : piece.text;
	};
	switch (node.kind) {
		case 'given':
			return leaf(writing.given(node.id));
		case 'constant':
			return leaf(writing.constant(node.name, node.value));
		case 'named': {
			const text = writing.named(node.id);
			return text === undefined ? write(node.of, writing) : leaf(text);
		}
		case 'sum': {
			const less = typeset ? '−' : '-';
			const text = node.terms
				.map((term, i) => {
					const part = inside(term.of, BINDS.middle);
					if (i === 0) return term.sign === 1 ? part : `${less}${part}`;
					return ` ${term.sign === 1 ? '+' : less} ${part}`;
				})
				.join('');
			return { text, binds: node.terms.length === 1 && node.terms[0]?.sign === 1 ? BINDS.middle : BINDS.loose };
		}
		case 'product':
			return {
				text: node.factors.map((f) => inside(f, BINDS.middle)).join(typeset ? ' × ' : ' * '),
				binds: BINDS.middle
			};
		case 'quotient':
			return {
				text: `${inside(node.over, BINDS.middle)} ${typeset ? '÷' : '/'} ${inside(node.under, BINDS.measured)}`,
				binds: BINDS.middle
			};
		case 'square':
			return { text: `${inside(node.of, BINDS.tight)}${typeset ? '²' : '^2'}`, binds: BINDS.middle };
		case 'root':
			return typeset
				? { text: `√(${write(node.of, writing).text})`, binds: BINDS.tight }
				: { text: `sqrt(${write(node.of, writing).text})`, binds: BINDS.tight };
		case 'extreme': {
			if (node.among.length === 1 && node.among[0] !== undefined) return write(node.among[0].of, writing);
			const name = node.pick === 'greatest' ? 'max' : 'min';
			return {
				text: `${name}(${node.among.map((one) => write(one.of, writing).text).join(typeset ? '; ' : ', ')})`,
				binds: BINDS.tight
			};
		}
	}
}

/** A negative number needs brackets inside anything; one with its unit, under a square: (1.9 m)². */
function leaf(text: string): Piece {
	if (/^[-−]/.test(text)) return { text, binds: BINDS.loose };
	if (!/\s/.test(text)) return { text, binds: BINDS.tight };
	return { text, binds: text.includes('/') ? BINDS.middle : BINDS.measured };
}
