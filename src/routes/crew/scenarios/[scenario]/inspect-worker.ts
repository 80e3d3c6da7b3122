/** The thread in which a scenario is inspected while its author types. */
import type { Asked } from './model/inspect-messages.ts';
import { inspector } from './model/inspecting.ts';

const { port1, port2 } = new MessageChannel();
/** What waits for a turn, the oldest first. */
const waiting: (() => void)[] = [];
port1.onmessage = () => waiting.shift()?.();

const take = inspector({
	post: (answer) => postMessage(answer),
	pause: () =>
		new Promise((resolve) => {
			waiting.push(resolve);
			port2.postMessage(null);
		}),
	now: () => performance.now()
});

addEventListener('message', (event: MessageEvent<Asked>) => void take(event.data));
