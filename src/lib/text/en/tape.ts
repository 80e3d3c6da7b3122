/** The tapes in the drawing. */
export const tape = {
	needed: 'Needed',
	own: 'Your tape',
	total: 'Needed',
	zero: ({ place }: { place: string }) => `0 = ${place}`,
	missing: ({ amount }: { amount: string }) => `${amount} missing`,
	tooMuch: ({ amount }: { amount: string }) => `${amount} too much`,
	instead: ({ amount, right }: { amount: string; right: string }) => `${amount} in place of ${right}`,
	topOf: ({ thing }: { thing: string }) => `top of ${thing}`,
	firstMet: 'first thing to meet',
	thereIs: 'There is',
	shortBy: 'Short by',
	spare: 'To spare',
	you: ({ value }: { value: string }) => `you: ${value}`,
	youSame: 'you: same',
	youLeftOut: 'you: left out',
	youTwice: 'you: twice',
	noOwnTape: 'Your number tells no chain of its own.'
};
