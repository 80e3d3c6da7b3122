/** A load generator for one kind of request: ready-made bytes over connections that stay open. */
import { connect, type Socket } from 'node:net';

const END_OF_HEAD = Buffer.from('\r\n\r\n');

/** A response taken off the front of what has arrived; undefined while it is not all there. */
function responseIn(arrived: Buffer): { status: number; size: number } | undefined {
	const head = arrived.indexOf(END_OF_HEAD);
	if (head < 0) return undefined;
	const text = arrived.toString('latin1', 0, head);
	const status = Number(text.slice(9, 12));
	const start = head + END_OF_HEAD.length;
	const length = /\r\ncontent-length: *(\d+)/i.exec(text)?.[1];
	if (length !== undefined) {
		const size = start + Number(length);
		return arrived.length >= size ? { status, size } : undefined;
	}
	if (!/\r\ntransfer-encoding: *chunked/i.test(text)) throw new Error(`a response says no length:\n${text}`);
	const end = arrived.indexOf('\r\n0\r\n\r\n', head);
	return end < 0 ? undefined : { status, size: end + 7 };
}

/** Sends requests one after the other over one connection; `next` gives undefined when there are no more. */
function sendAll(host: string, port: number, next: () => Buffer | undefined, expected: number): Promise<void> {
	return new Promise((done, failed) => {
		const socket: Socket = connect({ host, port, noDelay: true });
		let arrived: Buffer = Buffer.alloc(0);
		const send = (): void => {
			const request = next();
			if (request === undefined) {
				socket.end();
				done();
			} else socket.write(request);
		};
		socket.once('connect', send);
		socket.once('error', failed);
		socket.once('close', () => failed(new Error('the server closed the connection')));
		socket.on('data', (part: Buffer) => {
			arrived = arrived.length === 0 ? part : Buffer.concat([arrived, part]);
			const response = responseIn(arrived);
			if (response === undefined) return;
			if (response.status !== expected) {
				failed(new Error(`answered ${response.status}, not ${expected}: ${arrived.toString('utf8').slice(0, 1000)}`));
				socket.destroy();
				return;
			}
			arrived = arrived.subarray(response.size);
			send();
		});
	});
}

/** @returns the bytes of a POST of JSON. */
export function post(path: string, body: string, cookie: string): Buffer {
	const bytes = Buffer.byteLength(body);
	const head = [
		`POST ${path} HTTP/1.1`,
		'host: 127.0.0.1',
		'content-type: application/json',
		'accept: application/json',
		`cookie: ${cookie}`,
		`content-length: ${bytes}`
	];
	return Buffer.from(`${head.join('\r\n')}\r\n\r\n${body}`);
}

/**
 * @param address `http://127.0.0.1:PORT`. @param expected the status that every response must have.
 * @returns how many requests a second were answered, all of them with the status expected.
 */
export async function requestRate(
	address: string,
	requests: readonly Buffer[],
	connections: number,
	expected: number
): Promise<number> {
	const { hostname, port } = new URL(address);
	let at = 0;
	const next = (): Buffer | undefined => requests[at++];
	const start = performance.now();
	await Promise.all(Array.from({ length: connections }, () => sendAll(hostname, Number(port), next, expected)));
	return (requests.length * 1000) / (performance.now() - start);
}
