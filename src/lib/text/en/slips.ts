/** Slips: what is missing or wrong, why it matters, the rule, what to look at. */
import type { SlipId } from '#lib/slips/index.ts';
import { withTitles } from '../parts.ts';

export const slips = withTitles<SlipId | 'label-range-overlooked'>({
	/* Another question is answered. */
	'datum-anchorage': {
		label: 'Measured from the anchorage',
		clause: ({ from }) => `your number starts at the anchorage, not at ${from}`,
		why: ({ term }) => `Each start gives another number. Here the two differ by ${term}.`,
		rule: 'Measure from the level that the question names.',
		hint: 'Find the level in the question. Put the top of your tape there.'
	},
	'datum-d-ring': {
		label: 'Measured from the D-ring',
		clause: ({ from }) => `your number starts at the D-ring, not at ${from}`,
		why: ({ term }) => `Each start gives another number. Here the two differ by ${term}.`,
		rule: 'Measure from the level that the question names.',
		hint: 'Find the level in the question. Put the top of your tape there.'
	},
	'datum-surface': {
		label: 'Measured from the walking surface',
		clause: ({ from }) => `your number starts at the walking surface, not at ${from}`,
		why: ({ term }) => `Each start gives another number. Here the two differ by ${term}.`,
		rule: 'Measure from the level that the question names.',
		hint: 'Find the level in the question. Put the top of your tape there.'
	},
	'limit-for-value': {
		label: 'The limit in place of the free fall',
		clause: ({ value }) => `you took the greatest free fall allowed, ${value}, for the free fall here`,
		why: ({ name, right }) => `${name} would fall ${right} here. The limit is only what you hold it against.`,
		rule: 'Work the free fall out first. Then hold it against the limit.',
		hint: 'Start with the lanyard length and the two heights.'
	},
	/* A whole quantity is put aside. */
	'lanyard-for-free-fall': {
		label: 'Lanyard length in place of the free fall',
		clause: ({ value }) => `you took the whole lanyard, ${value}, for the free fall`,
		why: ({ name, right }) => `They are equal only when anchorage and D-ring are level. Here ${name} falls ${right} until the lanyard pulls tight.`,
		rule: 'Free fall is the lanyard length less the rise of the anchorage above the D-ring.',
		hint: 'How far is the anchorage above the D-ring, or below it?'
	},
	'free-fall-for-line': {
		label: 'Free fall in place of the lanyard',
		clause: ({ from }) => `you counted the free fall, where the whole lanyard counts from ${from}`,
		why: ({ term }) => `From there the tape runs down the whole lanyard. The two differ by ${term}.`,
		rule: 'From the anchorage, count the lanyard. From the D-ring or the surface, count the free fall.',
		hint: 'Look where your tape hangs. What does it run along first?'
	},
	'expected-elongation': {
		label: 'Expected elongation in place of the label’s',
		clause: () => 'you worked the elongation out from the average force',
		why: ({ term }) => `That is what to expect, not the most that can come. The two differ by ${term}.`,
		rule: 'Plan with the greatest elongation on the label.',
		hint: 'Read the elongation on the absorber’s label.'
	},
	/* A given is misread. */
	'other-class-elongation': {
		label: 'Elongation of another absorber',
		clause: () => 'you used the elongation of another absorber',
		why: ({ name, term }) => `It is not the one that ${name} wears. The two differ by ${term}.`,
		rule: 'Read the label of the absorber in use.',
		hint: 'Which absorber hangs on this lanyard?'
	},
	'other-margin': {
		label: 'Margin of another practice',
		clause: () => 'you kept the margin of another practice',
		why: ({ term }) => `Margins differ from place to place. Here the two differ by ${term}.`,
		rule: 'Keep the margin that the site names.',
		hint: 'Look for the rule that holds here.'
	},
	'stature-for-d-ring': {
		label: 'Body height in place of the D-ring height',
		clause: ({ name }) => `you used ${name}’s body height, not the height of the D-ring`,
		why: ({ name }) => `The lanyard pulls at the D-ring. It sits on the back, well below the top of ${name}’s head.`,
		rule: 'The lanyard pulls at the D-ring: use its height above the soles.',
		hint: 'Find the dimension that ends at the D-ring.'
	},
	'posture-ignored': {
		label: 'Kneeling not seen',
		clause: ({ name }) => `you used the D-ring height standing, but ${name} kneels`,
		why: ({ term }) => `Kneeling brings the D-ring down, so it starts lower. That changes this step by ${term}.`,
		rule: 'Before the fall, take the D-ring where it is in this posture.',
		hint: 'How high is the D-ring right now?'
	},
	'kneeling-shortens-clearance': {
		label: 'Kneeling taken to shorten the body',
		clause: ({ name }) => `you counted ${name} as kneeling at the end of the fall`,
		why: ({ name, term }) => `After the fall ${name} hangs at full length. Your tape is ${term} too short.`,
		rule: 'Kneeling changes the start of the fall. It does not shorten the body that hangs.',
		hint: 'Picture the end of the fall. Which way do the legs hang?'
	},
	'wrong-floor': {
		label: 'Height from another floor',
		clause: () => 'you measured the anchorage from another floor',
		why: ({ name, term }) => `${name} does not stand there. The two floors lie ${term} apart.`,
		rule: 'Take every height from the level the worker stands on.',
		hint: 'Follow the dimension of the anchorage down to its lower end.'
	},
	'offset-ignored': {
		label: 'Offset left out',
		clause: () => 'you took the lanyard to hang straight down',
		why: ({ name }) => `${name} stands to one side. A slanted lanyard reaches less far down, so it is tight sooner.`,
		rule: 'To one side, the line is tight at √(line² − offset²) below the anchorage.',
		hint: 'Draw the triangle: the line, the offset, the depth.'
	},
	'offset-subtracted': {
		label: 'Offset taken off the line',
		clause: () => 'you took the offset straight off the line',
		why: ({ right, value }) => `Sides of a triangle do not add up in a row. The line reaches ${right} down, not ${value}.`,
		rule: 'To one side, the line is tight at √(line² − offset²) below the anchorage.',
		hint: 'Square the line and the offset. Subtract, then take the root.'
	},
	'offset-for-swing-drop': {
		label: 'Offset in place of the swing drop',
		clause: () => 'you took the offset for the swing drop',
		why: ({ right }) => `The offset lies sideways. The drop of the swing is ${right}.`,
		rule: 'The swing drop is the line less the depth at which it pulls tight.',
		hint: 'How deep is the D-ring when the line pulls tight, and at the end of the swing?'
	},
	'average-for-peak': {
		label: 'Average force in place of the peak',
		clause: ({ value }) => `you used the average force, ${value}, not the greatest`,
		why: ({ right }) => `The pull rises above its average. Body and anchorage must take the peak, ${right}.`,
		rule: 'Check a force with the greatest arrest force on the label.',
		hint: 'Look on the label for the greatest force.'
	},
	'dry-for-conditioned': {
		label: 'Dry force in place of wet or frozen',
		clause: ({ value }) => `you used the force of a dry absorber, ${value}`,
		why: ({ right }) => `This one is wet or frozen, and pulls harder: up to ${right}.`,
		rule: 'Wet or frozen, use the force that the label states for that.',
		hint: 'What does the story say about the weather?'
	},
	'strongest-capacity': {
		label: 'The strongest part in place of the weakest',
		clause: ({ value }) => `you took ${value}, what the strongest part can carry`,
		why: ({ right }) => `The weakest part decides. It carries ${right}.`,
		rule: 'The capacity of the whole is the least of all its parts.',
		hint: 'Compare the capacity on every label.'
	},
	/* Signs and operands. */
	'heights-wrong-way': {
		label: 'Heights subtracted the wrong way',
		clause: () => 'you subtracted the two heights the wrong way round',
		why: ({ right, value }) => `The free fall is ${right} here, not ${value}. A high anchorage shortens the fall, a low one makes it longer.`,
		rule: 'Rise is the anchorage height less the D-ring height. Take the rise off the line.',
		hint: 'Is the anchorage above the D-ring, or below it?'
	},
	'anchorage-height-added': {
		label: 'Anchorage height with the wrong sign',
		clause: () => 'you added the anchorage height, where it is taken off',
		why: () => 'A higher anchorage lies further above the D-ring. In your sum it lies further below.',
		rule: 'Rise is the anchorage height less the D-ring height. The rise comes off the line.',
		hint: 'Raise the anchorage in your mind. What should happen to the free fall?'
	},
	/* Terms left out. */
	'heights-left-out': {
		label: 'Both heights left out',
		clause: () => 'the heights of the anchorage and the D-ring are missing from your free fall',
		why: ({ right, value }) => `The fall starts at the D-ring, not at the anchorage. It is ${right}, not ${value}.`,
		rule: 'Free fall is the depth of the line less the rise of the anchorage above the D-ring.',
		hint: 'Where is the D-ring when the fall starts?'
	},
	'd-ring-left-out': {
		label: 'D-ring height left out',
		clause: () => 'the height of the D-ring is missing from your number',
		why: ({ name, term }) => `${name}’s fall starts at the D-ring, ${term} above the surface. It does not start at the soles.`,
		rule: 'Rise is the anchorage height less the D-ring height.',
		hint: 'Where does the lanyard join the harness?'
	},
	'standing-place-ignored': {
		label: 'Standing place not seen',
		clause: ({ name }) => `you let ${name} stand on the walking surface itself`,
		why: ({ name, term }) => `${name}’s soles are ${term} off that level. The D-ring moves with them.`,
		rule: 'Add the height of the standing place to the D-ring height.',
		hint: 'What is under the soles?'
	},
	'connector-left-out': {
		label: 'Anchorage connector left out',
		clause: ({ term }) => `the anchorage connector’s ${term} is missing`,
		why: () => 'The lanyard hangs from the connector. Its length counts in each number along the line.',
		rule: 'Count the connector as part of the line, once.',
		hint: 'What joins the lanyard to the structure?'
	},
	'elongation-left-out': {
		label: 'Elongation left out',
		clause: ({ term }) => `the absorber’s ${term} is not on your tape`,
		why: ({ name, term }) => `It stops ${name} by tearing open. That takes up to ${term}.`,
		rule: 'Add the greatest elongation on the label.',
		hint: 'What happens to the absorber while it stops the fall?'
	},
	'margin-left-out': {
		label: 'Margin left out',
		clause: ({ term }) => `the margin of ${term} is not on your tape`,
		why: ({ name }) => `Without it ${name}’s soles stop just at the first thing below. Nothing is left for an error.`,
		rule: 'Keep the margin free under the soles.',
		hint: 'How much air must be left at the end?'
	},
	'body-left-out': {
		label: 'Body left out',
		clause: () => 'the body below the D-ring is not on your tape',
		why: ({ name, term }) => `${name} hangs from the D-ring. The soles are ${term} below it, and they get there first.`,
		rule: 'From the anchorage or the D-ring, add the body down to the soles.',
		hint: 'Which part of the body would meet the ground first?'
	},
	'stretch-left-out': {
		label: 'Slide and stretch left out',
		clause: ({ term }) => `the ${term} that the harness gives is not on your tape`,
		why: ({ name }) => `The D-ring slides up and the webbing stretches. ${name}’s body sinks by that much.`,
		rule: 'Add the D-ring slide and the harness stretch.',
		hint: 'What does the harness do when the pull comes?'
	},
	'swing-drop-left-out': {
		label: 'Swing drop left out',
		clause: ({ term }) => `the drop of the swing, ${term}, is not on your tape`,
		why: ({ name }) => `${name} swings in under the anchorage. The low point of the swing lies deeper than the point where the line pulls tight.`,
		rule: 'To one side, add the drop of the swing.',
		hint: 'Where does the swing have its lowest point?'
	},
	'straightening-left-out': {
		label: 'Straightening of the body left out',
		clause: ({ name }) => `the straightening of ${name}’s legs is not on your tape`,
		why: ({ name, term }) => `${name} kneels at first and hangs straight at the end. The soles come ${term} lower.`,
		rule: 'From the surface, add how far the legs straighten.',
		hint: 'Compare the D-ring height kneeling and standing.'
	},
	'obstacle-overlooked': {
		label: 'Obstacle not seen',
		clause: ({ thing }) => `you measured past ${thing}`,
		why: ({ name, thing, term }) => `${name} would meet ${thing} first. That takes ${term} off the room below.`,
		rule: 'Measure down to the first thing that the body could meet.',
		hint: 'What lies on the way down, before the lower level?'
	},
	'sometimes-obstacle-ignored': {
		label: 'A thing that can come not counted',
		clause: ({ thing }) => `you left out ${thing}, because nothing stands there now`,
		why: ({ term }) => `That can be there when a fall happens. The room below is then ${term} less.`,
		rule: 'Count what can stand below at any time, at its highest.',
		hint: 'What does the story say can come, and when?'
	},
	'body-mass-alone': {
		label: 'Body mass alone',
		clause: ({ name }) => `you counted ${name}’s body alone`,
		why: ({ term }) => `Clothing, harness and tools on the person fall too. They add ${term}.`,
		rule: 'Add all that hangs on the person: body, clothing, gear, tools.',
		hint: 'What else hangs on the harness?'
	},
	'tools-left-out': {
		label: 'Tools left out',
		clause: ({ term }) => `the tools on the person are missing: ${term}`,
		why: ({ name }) => `Tools on the belt fall with ${name}. The absorber must stop them too.`,
		rule: 'Add the tools that hang on the person.',
		hint: 'What hangs on the belt?'
	},
	'equipment-left-out': {
		label: 'Harness and gear left out',
		clause: ({ term }) => `the harness and gear are missing: ${term}`,
		why: ({ name }) => `Harness, helmet and lanyard fall with ${name}. The absorber must stop them too.`,
		rule: 'Add the harness and the gear that is worn.',
		hint: 'What does the person wear?'
	},
	'weight-ignored': {
		label: 'Weight left out of the stop',
		clause: ({ name }) => `${name}’s weight is missing from the stop`,
		why: ({ right, value }) => `Gravity still pulls while the absorber opens. It runs out ${right}, not ${value}.`,
		rule: 'Take the weight off the average force, then divide.',
		hint: 'What pulls down while the absorber pulls up?'
	},
	/* Terms counted twice, terms added. */
	'connector-twice': {
		label: 'Anchorage connector counted twice',
		clause: ({ term }) => `the anchorage connector’s ${term} is in your number twice`,
		why: () => 'It hangs there once. Too much can make you turn down a tie-off that passes.',
		rule: 'Count the connector as part of the line, once.',
		hint: 'Follow the line from the structure to the D-ring. What do you pass?'
	},
	'stretch-twice': {
		label: 'Slide and stretch counted twice',
		clause: ({ term }) => `the harness’s ${term} is on your tape twice`,
		why: () => 'The harness gives that much once. Too much can make you turn down a tie-off that passes.',
		rule: 'Add the slide and stretch once.',
		hint: 'Go through your terms. Does one stand there two times?'
	},
	'elongation-in-free-fall': {
		label: 'Elongation counted into the free fall',
		clause: ({ term }) => `you counted the absorber’s ${term} into the free fall`,
		why: () => 'The free fall ends when the lanyard pulls tight. Only then the absorber starts to open.',
		rule: 'Free fall ends where the pull begins. Elongation comes after it.',
		hint: 'What has the absorber done by the time the lanyard is tight?'
	},
	'slack-added': {
		label: 'Slack added',
		clause: ({ term }) => `you added ${term} of slack to the free fall`,
		why: () => 'The slack is part of the lanyard length. Now it is in your number twice.',
		rule: 'Lanyard length and heights already hold the slack.',
		hint: 'Where does the slack come from?'
	},
	'body-from-surface': {
		label: 'Body counted from the surface',
		clause: ({ from }) => `you added the body, but from ${from} down it is in the sum already`,
		why: ({ name }) => `${name}’s soles start at that level. They come down just as far as the D-ring does.`,
		rule: 'From the walking surface, leave the body out.',
		hint: 'Where are the soles before the fall?'
	},
	'tethered-counted': {
		label: 'Tethered tools counted',
		clause: ({ term }) => `you counted ${term} of tools that hang on the structure`,
		why: ({ name }) => `They do not fall with ${name}. The harness does not carry them.`,
		rule: 'Leave out the tools that are tethered to the structure.',
		hint: 'Where is each tool tied?'
	},
	'off-path-counted': {
		label: 'A thing off the path counted',
		clause: ({ thing }) => `you measured down to ${thing}`,
		why: ({ name, thing }) => `${name}’s body does not pass over ${thing}. Too little room can make you turn down a tie-off that passes.`,
		rule: 'Count what the body could meet on its way, the swing included.',
		hint: 'How wide is the path of the fall?'
	},
	'label-range-overlooked': {
		label: 'Label used outside its range',
		clause: () => 'you gave a number, though the label does not hold for this case',
		why: ({ name }) => `The figures hold only within the label’s mass range and free fall. For ${name} nobody has stated any.`,
		rule: 'Outside the label, no clearance can be stated. Do not tie off.',
		hint: 'Hold the mass and the free fall against the label.'
	}
});
