/** What is seen of each part of a picture, in words that judge nothing. By form, then by look. */
import type { FormId, LookId } from '#lib/findings/index.ts';

export const looks: { readonly [F in FormId]: { readonly [L in LookId<F>]: string } } = {
	webbing: {
		even: 'The edges are straight and the weave is even.',
		dusty: 'The weave is even under a thin layer of dust.',
		creased: 'The strap shows two lines where it lay folded. No thread stands off.',
		notch: 'A notch goes in from the edge, past half the width. Threads stand off at its sides.',
		gloss: 'A smooth, hard and shiny place draws the edges in. Small beads sit on it.',
		blotch: 'A pale patch with a sharp rim covers the weave. It is stiff and has small holes.',
		fuzz: 'Short fibres stand off all along both edges. Loops are torn open in the weave.'
	},
	stitches: {
		rows: 'Every row of stitches runs through, in one colour.',
		'two-tone': 'Every row runs through. The cross is sewn in a paler thread than the frame.',
		'rows-open': 'Long loops of thread hang out. The two layers gape at one end.',
		'rows-gap': 'In the middle, a row of small holes is left without any thread.'
	},
	ring: {
		round: 'The bow is even all round.',
		scuffed: 'The bow is even. The surface shows fine scratches.',
		oval: 'The bow leans to one side and the foot is drawn out.',
		nick: 'A notch as deep as a third of the bar is in the bow.',
		pits: 'Many small pits lie round the bow. Scales stand off between them.'
	},
	buckle: {
		frame: 'The frame is square and flat.',
		scuffed: 'The frame is square. Its corners show fine scratches.',
		skewed: 'The sides of the frame are wavy and not square.',
		crack: 'A jagged gap goes through one side of the frame.'
	},
	tag: {
		full: 'The label is there. All of its lines can be read.',
		dirty: 'The label is stained. All of its lines can be read.',
		blank: 'The label is rubbed down. A few single strokes are left.',
		stub: 'A torn strip with two threads hangs where the label was sewn on.'
	},
	pack: {
		shut: 'The cover is shut, and its seam runs all round.',
		dusty: 'The cover is dusty and shut. Its seam runs all round.',
		strip: 'The cover is shut. A strip hangs out of its window.',
		torn: 'The cover is torn open. Folded webbing hangs out of it.'
	},
	hook: {
		shut: 'The gate meets the nose. A lever stands on the back.',
		scuffed: 'The gate meets the nose. A lever stands on the back. The body shows fine scratches.',
		gap: 'The gate rests beside the nose. A gap is left between them.',
		'gate-bent': 'The gate is bent like an S. Its end stops short of the nose.',
		crack: 'The gate meets the nose. A jagged line with branches runs across the bow.',
		'no-catch': 'The gate meets the nose. The lever on the back is gone. Its spring stands out.',
		pits: 'The gate meets the nose. Many pits cover the body, and scales stand off.'
	},
	line: {
		even: 'The webbing is straight, and its weave is even.',
		dusty: 'The webbing is straight under a thin layer of dust.',
		knot: 'The webbing runs once round itself and through its own loop.',
		notch: 'A notch goes in from the edge, past half the width. Threads stand off.',
		gloss: 'A smooth, hard and shiny place draws the edges in. Small beads sit on it.',
		fuzz: 'Short fibres stand off all along both edges. Loops are torn open.'
	},
	'worn-shoulder': {
		flat: 'The strap lies flat from the shoulder down.',
		dusty: 'The strap lies flat. It is dusty.',
		twisted: 'The strap turns over once, so that its back faces out.',
		slipped: 'The strap runs over the upper arm, beside the shoulder.',
		notch: 'The strap lies flat. A notch goes in from its edge, with threads standing off.'
	},
	'worn-ring': {
		blades: 'The ring lies between the shoulder blades.',
		waist: 'The ring lies a hand above the belt.'
	},
	'worn-seat': {
		under: 'The strap runs round under the seat.',
		over: 'The strap runs across the lower back, above the belt.'
	},
	'worn-leg': {
		snug: 'The strap lies flat and close round the thigh.',
		dusty: 'The strap lies close round the thigh. It is dusty.',
		twisted: 'The strap lies close. It turns over once, so that its back faces out.',
		loose: 'The strap hangs down in a wide bow. There is room for two fists beside the thigh.',
		fuzz: 'The strap lies close. Short fibres stand off all along its edges.'
	},
	'worn-lanyard': {
		'on-ring': 'The hook of the lanyard is on the ring on the back.',
		'on-belt': 'The hook of the lanyard is on a loop at the side of the belt.'
	},
	'worn-chest': {
		middle: 'The strap crosses at the middle of the chest.',
		belly: 'The strap crosses at the belly, just above the belt.',
		throat: 'The strap crosses right below the throat.'
	},
	'worn-buckle': {
		through: 'The strap goes over the bar and comes out at the far side.',
		half: 'The strap ends inside the frame. Nothing comes out at the far side.',
		skewed: 'The strap goes through. The sides of the frame are wavy and not square.'
	},
	'worn-end': {
		held: 'The end of the strap lies flat under two keepers.',
		hangs: 'The end of the strap hangs down to the thigh.'
	},
	anchorage: {
		'plate-tag': 'The line is on the ring of a bolted plate. A tag with a name and date hangs beside it.',
		pipe: 'The line is tied round a thin vent pipe. There is no tag.',
		rail: 'The line is hooked to a rail on two posts. There is no tag.'
	},
	'edge-line': {
		clear: 'The line ends well before the edge of the roof and touches nothing.',
		'on-edge': 'The line bends over the bare edge of the roof, down to a worker below.'
	},
	people: {
		one: 'One line runs to the anchorage.',
		two: 'Two lines run to the same anchorage, from two workers.'
	},
	packs: {
		one: 'One pack is in the line.',
		two: 'Two packs are in the line, one after the other.'
	},
	'rescue-post': {
		ready: 'A helper stands by a board with lines of writing. A kit bag is under it.',
		bare: 'The board has nothing on it. Nobody is there, and no bag.'
	},
	'leg-back': {
		'next-eye': 'The hook is in the eye above the flange.',
		hangs: 'The hook hangs free below the hip.',
		'low-eye': 'The hook is in the eye at knee height.'
	},
	'leg-front': {
		'eye-above': 'The hook is in the eye over the head, below the flange.',
		'low-eye': 'The hook is in the eye at knee height.'
	},
	'leg-holding': {
		'eye-above': 'The hook is in a closed eye over the head.',
		'low-eye': 'The hook is in the eye at knee height.',
		'open-arm': 'The hook hangs over an arm that slopes down to an open end.'
	},
	'leg-spare': {
		'tear-tab': 'The spare hook is on a fabric tab that has a tear line.',
		'hip-ring': 'The spare hook is on a metal ring that is sewn to the strap.'
	},
	'hook-up': {
		'eye-seated': 'The bow of the hook is round the ring of an eye bolt. The gate is free.',
		'shackle-seated': 'The bow of the hook is round a shackle. The gate is free.',
		'tip-on-flange': 'The nose of the hook rests on the lip of a beam. The gate stands open.',
		'gate-on-bar': 'The hook is pulled sideways. Its gate lies on a round bar.',
		'hook-in-hook': 'The bow of the hook is round the bow of another hook.',
		'two-in-ring': 'Two hooks share one ring. They lie against each other.',
		'round-and-back': 'The line goes round a beam. Its hook is on the line itself.',
		'round-to-ring': 'The line goes round a beam. Its hook is on a tagged ring that is sewn into the line.'
	},
	'roof-side': {
		'reach-short': 'The dotted ring ends before this edge.',
		'rail-past': 'The dotted ring goes past this edge. A rail on posts stands along it.',
		'reach-past': 'The dotted ring goes past this edge. Nothing stands along it.'
	},
	'roof-hole': {
		'reach-short': 'The dotted ring ends before this opening.',
		covered: 'The dotted ring takes this opening in. A screwed plate covers it.',
		'reach-past': 'The dotted ring takes this opening in. Nothing covers it.'
	},
	'rescue-names': {
		written: 'The board has three lines of names and numbers.',
		empty: 'The board has three lines with nothing on them.'
	},
	'rescue-kit': {
		bag: 'A kit bag hangs on its hook.',
		'bare-hook': 'The hook for the kit bag is bare.'
	},
	'rescue-helper': {
		stands: 'A second person stands on the ground with a radio.',
		nobody: 'Nobody is on the ground.'
	},
	'rescue-reach': {
		reaches: 'The basket of the lift stands as high as the work place.',
		short: 'The boom of the lift is all out. Its basket ends far below the work place.'
	},
	'rescue-way': {
		open: 'The ground below the work place is clear.',
		blocked: 'Crates are stacked between the lift and the wall.'
	},
	'beam-hold': {
		clamp: 'A clamp grips both lips of the beam. The hook is in its ring, and a tag hangs on it.',
		'sling-sleeve': 'A sling goes round the beam. Thick sleeves lie at all four edges.',
		'round-to-ring': 'The line goes round the beam. Its hook is on a tagged ring that is sewn into the line.',
		'sling-bare': 'A sling goes round the beam. It lies bare on the edges, and fibres stand off.',
		conduit: 'The hook is on a thin cable pipe that hangs below the beam.',
		'round-and-back': 'The line goes round the beam. Its hook is on the line itself.'
	},
	attachment: {
		back: 'The line ends at the ring on the back.',
		hip: 'The line ends at a ring at the hip.'
	},
	term: { plain: 'A length on the tape.' },
	moment: { plain: 'One moment of the fall.' }
};
