/** Walks a machine through everything that a set of events can do, and tells which of its transitions were never taken. */
import { initialTransition, transition, type AnyMachineSnapshot, type AnyStateMachine, type EventObject, type InputFrom, type SnapshotFrom } from 'xstate';

export interface Walked {
	/** Every transition of the machine as it stands in its definition: "state --EVENT[i]--> target". */
	readonly all: readonly string[];
	/** Those that no walk took. */
	readonly never: readonly string[];
	/** How many different snapshots were seen. */
	readonly snapshots: number;
}

type Definition = AnyStateMachine['root']['on'][string][number];

function definitions(machine: AnyStateMachine): ReadonlyMap<Definition, string> {
	const named = new Map<Definition, string>();
	const visit = (node: AnyStateMachine['root']): void => {
		for (const [event, list] of node.transitions) {
			list.forEach((one, i) => {
				const target = one.target?.map((state) => state.key).join() ?? 'here';
				named.set(one, `${node.key} --${event}[${i}]--> ${target}`);
			});
		}
		for (const child of Object.values(node.states)) visit(child);
	};
	visit(machine.root);
	return named;
}

/**
 * @param events all events that are tried in each snapshot
 * @param most snapshots to look at: the walk is breadth first, so that short ways come first
 */
export function walkEveryTransition<Machine extends AnyStateMachine>(
	machine: Machine,
	input: InputFrom<Machine>,
	events: readonly EventObject[],
	most = 1200
): Walked {
	const named = definitions(machine);
	const taken = new Set<Definition>();
	const [first] = initialTransition(machine, input);
	const key = (snapshot: AnyMachineSnapshot): string => JSON.stringify([snapshot.value, snapshot.context]);
	const seen = new Set([key(first)]);
	const queue: SnapshotFrom<Machine>[] = [first];
	for (let snapshot = queue.shift(); snapshot !== undefined && taken.size < named.size; snapshot = queue.shift()) {
		for (const event of events) {
			for (const one of machine.getTransitionData(snapshot, event)) taken.add(one);
			const [next] = transition(machine, snapshot, event as never);
			const of = key(next);
			if (seen.has(of) || seen.size >= most) continue;
			seen.add(of);
			queue.push(next);
		}
	}
	const all = [...named.values()];
	return { all, never: [...named].filter(([one]) => !taken.has(one)).map(([, name]) => name), snapshots: seen.size };
}
